/**
 * Dimensions of parts as they are sold, in millimetres, each with where it was published. What no source gives is asked of the
 * person and stands nowhere: how deep a lever switch or a push-pull reaches under the guard, how deep cavities are, the slot of a
 * lever and its screws.
 */
const SPEC_LIST = "public repository gitfrage/guitarspecs";
const ROUTER_PARTS = "public repository dnewcome/grout";
const PART_MODELS = "public repository nickzoic/models3d";
const dataSheet = (number: string) => `data sheet, dtsheet.com/doc/${number}`;

interface Thread {
  readonly length?: number;
  readonly diameter: number;
}

/** A part as it is sold: what of it lies under the guard, and what is cut out for it. */
export interface Preset {
  readonly title: string;
  readonly kind: "pickup" | "pot" | "switch";
  /** Shapes about its middle; a rectangle's sides are along the strings and across them. */
  readonly shapes: readonly ({ readonly round: number } | { readonly box: readonly [number, number] })[];
  readonly bushing?: Thread;
  /** From the first screw to the last, along the strings and across them. */
  readonly screws?: { readonly along: number; readonly across: number; readonly diameter?: number };
  readonly source: string;
}

const pot = (title: string, round: number, bushing: Thread, source: string): Preset => ({
  title,
  kind: "pot",
  shapes: [{ round }],
  bushing,
  source,
});

export const PRESETS = {
  "pot-24": pot("pot, 24 mm, thread 10 mm long", 24, { length: 10, diameter: 8 }, SPEC_LIST),
  "pot-24-long": pot("pot, 24 mm, long thread of 20 mm", 24, { length: 20, diameter: 8 }, SPEC_LIST),
  "pot-17": pot("mini pot, 17 mm, thread 10 mm long", 17, { length: 10, diameter: 7 }, SPEC_LIST),
  "pot-24-inch": pot(
    "pot, 24 mm, 3/8 inch thread 9.5 mm long",
    24,
    { length: 9.5, diameter: 9.525 },
    dataSheet("1640678"),
  ),
  "pot-24-inch-long": pot(
    "pot, 24 mm, 3/8 inch thread 16 mm long",
    24,
    { length: 16, diameter: 9.525 },
    dataSheet("1640678"),
  ),
  "push-pull-17": pot("push-pull, 17 mm, 3/8 inch thread", 17, { length: 9.5, diameter: 9.525 }, dataSheet("243295")),
  "mini-toggle-four-pole": {
    title: "mini toggle with four poles",
    kind: "switch",
    shapes: [{ box: [12.7, 21.6] }],
    bushing: { diameter: 6.35 },
    source: dataSheet("1390930"),
  },
  "humbucker-ring": {
    title: "humbucker under a ring, with the wings that its hole has",
    kind: "pickup",
    shapes: [{ box: [38, 70] }, { box: [20, 86] }],
    screws: { along: 38, across: 83 },
    source: ROUTER_PARTS,
  },
  "single-coil": {
    title: "single coil, its opening and its screws' heads; measure its base plate",
    kind: "pickup",
    shapes: [{ box: [19, 68] }, { box: [6.5, 83] }],
    screws: { along: 0, across: 76.5, diameter: 3.5 },
    source: PART_MODELS,
  },
} as const satisfies Readonly<Record<string, Preset>>;

export type PresetName = keyof typeof PRESETS;
export const PRESET_NAMES = Object.keys(PRESETS) as [PresetName, ...PresetName[]];
export const presetOf = (name: PresetName): Preset => PRESETS[name];

/** Pole spacings that are sold, from the first pole to the last. */
export const POLE_SPACINGS = {
  humbucker: { millimetres: [49.2, 50, 52, 53], source: `retail listings; ${SPEC_LIST}` },
  single: { millimetres: [48, 50, 52, 52.5, 52.8], source: `retail listings; ${SPEC_LIST}` },
} as const;

/** Where the strings over a humbucker spread wider than this, the wide spacing is what is sold for it. */
export const WIDE_SPREAD = { millimetres: 50, source: "retail listings" } as const;

export const SCALES = { millimetres: [572, 596.9, 629, 635, 648, 650, 686], source: SPEC_LIST } as const;
