import type { PlanInput } from "./plan-schema.ts";

/** A customary guard as a plan, ready to be changed. */
export interface PlanPreset {
  readonly id: string;
  readonly title: string;
  readonly plan: PlanInput;
}

const SINGLES = { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "single-medium" };
const HSS = { ...SINGLES, bridge: "humbucker-medium" };
const HSH = { neck: "humbucker-medium", middle: "single-medium-rwrp", bridge: "humbucker-medium" };
const TWO_HUMBUCKERS = { neck: "humbucker-medium", bridge: "humbucker-medium" };
const TWO_P90 = { neck: "p90", bridge: "p90-rwrp" };

const tone = (pot: string, ...pickups: string[]) => ({
  pot,
  cap: "22n",
  ...(pickups.length > 0 ? { pickups } : {}),
});

function threeSingles(id: string, title: string, tones: PlanInput["tones"], rest: Partial<PlanInput> = {}): PlanPreset {
  const layout = tones?.length === 2 ? "lever-5-two-tone" : "lever-5-one-tone";
  return {
    id,
    title: `Three single coils: ${title}`,
    plan: { layout, pickups: SINGLES, volume: "250k", ...(tones ? { tones } : {}), ...rest },
  };
}

const NECK_AND_MIDDLE = [tone("250k", "neck"), tone("250k", "middle")];

const THREE_SINGLES: readonly PlanPreset[] = [
  threeSingles("singles-neck-middle", "tones for neck and middle", NECK_AND_MIDDLE),
  threeSingles("singles-neck-bridge", "tones for neck and bridge, middle free", [
    tone("250k", "neck"),
    tone("250k", "bridge"),
  ]),
  threeSingles("singles-bridge-shares", "neck tone, and one for middle and bridge", [
    tone("250k", "neck"),
    tone("250k", "middle", "bridge"),
  ]),
  threeSingles("singles-neck-middle-share", "one tone for neck and middle, one for the bridge", [
    tone("250k", "neck", "middle"),
    tone("250k", "bridge"),
  ]),
  threeSingles("singles-outer-share", "one tone for neck and bridge, one for the middle", [
    tone("250k", "neck", "bridge"),
    tone("250k", "middle"),
  ]),
  threeSingles("singles-master-tone", "one master tone", [tone("250k")]),
  threeSingles("singles-no-tone", "volume only", []),
  threeSingles(
    "singles-shared-cap",
    "tones for neck and middle on one cap",
    NECK_AND_MIDDLE.map(({ pot, pickups }) => ({ pot, pickups: [...(pickups ?? [])] })),
    { sharedCap: "47n" },
  ),
  threeSingles("singles-after-volume", "tones fed after the volume", NECK_AND_MIDDLE, { toneFeed: "after-volume" }),
  threeSingles("singles-no-load", "no-load tones", [
    { ...tone("250k", "neck"), noLoad: true },
    { ...tone("250k", "middle"), noLoad: true },
  ]),
  threeSingles("singles-seven-sounds", "bridge-on push-pull, seven sounds", NECK_AND_MIDDLE, {
    alwaysOn: { pickup: "bridge", by: "tone2" },
  }),
  threeSingles("singles-middle-phase", "middle phase on a push-pull", NECK_AND_MIDDLE, {
    phase: { pickup: "middle", by: "tone1" },
  }),
  threeSingles("singles-series", "neck and bridge in series on a push-pull", NECK_AND_MIDDLE, {
    seriesLink: { pickups: ["bridge", "neck"], by: "tone2" },
  }),
  {
    id: "singles-three-way",
    title: "Three single coils: three-position lever, tones for neck and middle",
    plan: { layout: "lever-3-two-tone", pickups: SINGLES, volume: "250k", tones: NECK_AND_MIDDLE },
  },
];

const WITH_HUMBUCKERS: readonly PlanPreset[] = [
  {
    id: "hss-push-pull-split",
    title: "HSS: bridge split by a push-pull, treble bleed",
    plan: {
      layout: "lever-5-two-tone",
      pickups: HSS,
      volume: "500k",
      tones: [tone("500k", "neck", "middle"), tone("500k", "bridge")],
      trebleBleed: { capacitance: "680p", parallel: "150k" },
      split: { pickup: "bridge", by: "tone2", keeps: "slug" },
    },
  },
  {
    id: "hss-automatic-split",
    title: "HSS: bridge split in position 2, master tone",
    plan: {
      layout: "lever-5-one-tone",
      pickups: HSS,
      volume: "500k",
      tones: [tone("500k")],
      split: { pickup: "bridge", by: { position: 2 }, keeps: "slug" },
    },
  },
  {
    id: "hss-resistor",
    title: "HSS: 500 kΩ pots with a resistor across each single coil",
    plan: {
      layout: "lever-5-one-tone",
      pickups: HSS,
      volume: "500k",
      tones: [tone("500k")],
      resistors: [
        { across: "neck", resistance: "470k" },
        { across: "middle", resistance: "470k" },
      ],
    },
  },
  {
    id: "hsh-automatic-splits",
    title: "HSH: splits in positions 2 and 4, tones for neck and bridge",
    plan: {
      layout: "lever-5-two-tone",
      pickups: HSH,
      volume: "500k",
      tones: [tone("500k", "neck"), tone("500k", "bridge")],
      split: [
        { pickup: "bridge", by: { position: 2 }, keeps: "slug" },
        { pickup: "neck", by: { position: 4 }, keeps: "slug" },
      ],
    },
  },
  {
    id: "hsh-push-pull-splits",
    title: "HSH: both humbuckers split by one push-pull",
    plan: {
      layout: "lever-5-one-tone",
      pickups: HSH,
      volume: "500k",
      tones: [tone("500k")],
      split: [
        { pickup: "neck", by: "tone" },
        { pickup: "bridge", by: "tone" },
      ],
    },
  },
  {
    id: "humbuckers-one-volume",
    title: "Two humbuckers: toggle, one volume, one tone",
    plan: { layout: "toggle-3-one-volume", pickups: TWO_HUMBUCKERS, volume: "500k", tones: [tone("500k")] },
  },
  {
    id: "humbuckers-two-tones",
    title: "Two humbuckers: toggle, one volume, two tones",
    plan: {
      layout: "toggle-3-one-volume",
      pickups: TWO_HUMBUCKERS,
      volume: "500k",
      tones: [tone("500k", "neck"), tone("500k", "bridge")],
    },
  },
  {
    id: "humbuckers-two-volumes",
    title: "Two humbuckers: toggle, two volumes, two tones",
    plan: {
      layout: "toggle-3-two-volumes",
      pickups: TWO_HUMBUCKERS,
      volume: "500k",
      tones: [tone("500k", "neck"), tone("500k", "bridge")],
    },
  },
  {
    id: "humbuckers-after-volume",
    title: "Two humbuckers: two volumes, tones fed after them",
    plan: {
      layout: "toggle-3-two-volumes",
      pickups: TWO_HUMBUCKERS,
      volume: "500k",
      tones: [tone("500k", "neck"), tone("500k", "bridge")],
      toneFeed: "after-volume",
    },
  },
  {
    id: "humbuckers-independent",
    title: "Two humbuckers: two independent volumes, master tone",
    plan: {
      layout: "toggle-3-two-volumes",
      pickups: TWO_HUMBUCKERS,
      volume: "500k",
      independentVolumes: true,
      tones: [tone("500k")],
    },
  },
  {
    id: "humbuckers-many-sounds",
    title: "Two humbuckers: series/parallel for the bridge, phase for the neck, both on push-pulls",
    plan: {
      layout: "toggle-3-two-volumes",
      pickups: TWO_HUMBUCKERS,
      volume: "500k",
      tones: [tone("500k", "neck"), tone("500k", "bridge")],
      phase: { pickup: "neck", by: "tone1" },
      seriesParallel: { pickup: "bridge", by: "tone2" },
    },
  },
];

const PAIRS_AND_ONES: readonly PlanPreset[] = [
  {
    id: "single-and-humbucker",
    title: "Covered single at the neck, humbucker at the bridge: three-position lever",
    plan: {
      layout: "lever-3-two-pickups",
      pickups: { neck: "single-covered", bridge: "humbucker-medium" },
      volume: "500k",
      tones: [tone("500k")],
      split: { pickup: "bridge", by: "tone" },
      resistors: [{ across: "neck", resistance: "270k" }],
    },
  },
  {
    id: "two-singles",
    title: "Two single coils: three-position lever, series by a push-pull",
    plan: {
      layout: "lever-3-two-pickups",
      pickups: { neck: "single-covered", bridge: "single-hot" },
      volume: "250k",
      tones: [tone("250k")],
      seriesLink: { pickups: ["bridge", "neck"], by: "tone" },
    },
  },
  {
    id: "p90-pair",
    title: "Two wide single coils: toggle, two volumes, two tones",
    plan: {
      layout: "toggle-3-two-volumes",
      pickups: TWO_P90,
      volume: "500k",
      tones: [tone("500k", "neck"), tone("500k", "bridge")],
    },
  },
  {
    id: "p90-pair-one-volume",
    title: "Two wide single coils: toggle, one volume, one tone",
    plan: { layout: "toggle-3-one-volume", pickups: TWO_P90, volume: "500k", tones: [tone("500k")] },
  },
  {
    id: "one-humbucker",
    title: "One humbucker: volume, tone, series/parallel by a push-pull",
    plan: {
      layout: "one-pickup",
      pickups: { bridge: "humbucker-hot" },
      volume: "500k",
      tones: [tone("500k")],
      seriesParallel: { pickup: "bridge", by: "volume" },
    },
  },
  {
    id: "one-p90",
    title: "One wide single coil: volume and tone",
    plan: { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones: [tone("500k")] },
  },
];

export const PLAN_PRESETS: readonly PlanPreset[] = [...THREE_SINGLES, ...WITH_HUMBUCKERS, ...PAIRS_AND_ONES];
