/** An option of a plan as the catalogue lists it. */
export interface PlanOption {
  /** The plan's key. */
  readonly name: string;
  readonly title: string;
  readonly meaning: string;
  /** Why some of its choices may not go together with the rest; what stands in braces is the plan's own. */
  readonly reasons: readonly string[];
}

const POLES = "this switch has two poles and {count} already in use; expected {needed} free";
const NO_POLE_FOR_TONES = "{layout}: no switch pole is free to pick tones after the volume";
const JOINED_FOR_GOOD =
  "joins {pickup} and {pickup} for good, since no switch pole is free to part them; expected one pickup, or none for a master tone";
const SPLIT_BY_POSITION = "splits {pickup} by position, but its ground lead is switched; expected a push-pull";
const AS_IT_STANDS = "as it stands";

export const PLAN_OPTIONS: readonly PlanOption[] = [
  {
    name: "layout",
    title: "Layout",
    meaning: "the selector, and how many volumes and tones; what has a place in another layout is kept",
    reasons: [NO_POLE_FOR_TONES, JOINED_FOR_GOOD],
  },
  {
    name: "pickups",
    title: "Pickups",
    meaning: "which pickup in each place, by its kind",
    reasons: ["set by the pickups one by one", AS_IT_STANDS],
  },
  { name: "volume", title: "Volume", meaning: "track and taper of the volume or volumes", reasons: [AS_IT_STANDS] },
  {
    name: "independentVolumes",
    title: "Either volume at 0",
    meaning: "with two volumes: whether one at 0 silences both pickups or its own alone",
    reasons: [],
  },
  {
    name: "trebleBleed",
    title: "Treble bleed",
    meaning: "a cap from the volume's input to its output, with a resistor beside it or in line",
    reasons: [],
  },
  {
    name: "tones",
    title: "Tones",
    meaning: "track, taper and cap of each tone knob, and the pickups that it works on; all of them make a master tone",
    reasons: [
      "a tone knob works on at least one pickup: tick another first, or choose {fewer}",
      "{pickup} is already on tone {number}",
      JOINED_FOR_GOOD,
      NO_POLE_FOR_TONES,
      AS_IT_STANDS,
    ],
  },
  { name: "sharedCap", title: "Tone caps", meaning: "one for each knob, or one that both share", reasons: [] },
  {
    name: "toneFeed",
    title: "Tone wired",
    meaning: "before the volume or after it",
    reasons: [NO_POLE_FOR_TONES],
  },
  {
    name: "split",
    title: "Split",
    meaning: "one coil alone, by a push-pull, a switch of its own or a position of the lever; offered for four leads",
    reasons: [
      POLES,
      SPLIT_BY_POSITION,
      "{pickup} is split already; expected one or the other",
      JOINED_FOR_GOOD,
      NO_POLE_FOR_TONES,
    ],
  },
  {
    name: "seriesParallel",
    title: "Coils in series or parallel",
    meaning: "a humbucker's coils, by a push-pull or a switch of its own; offered for four leads",
    reasons: [POLES, "{pickup} is split already; expected one or the other"],
  },
  {
    name: "phase",
    title: "Phase",
    meaning: "a pickup's two ends trade places, by a push-pull or a switch of its own",
    reasons: [
      POLES,
      SPLIT_BY_POSITION,
      "{pickup} never sounds beside another pickup, and alone it sounds the same either way round",
    ],
  },
  {
    name: "seriesLink",
    title: "Two pickups in series",
    meaning: "by a push-pull or a switch of its own",
    reasons: [POLES, SPLIT_BY_POSITION],
  },
  {
    name: "alwaysOn",
    title: "A pickup added to whatever is selected",
    meaning: "by a push-pull or a switch of its own",
    reasons: [POLES],
  },
  { name: "resistors", title: "Resistors", meaning: "across a pickup or a volume's outer lugs", reasons: [] },
  { name: "grounds", title: "Grounds", meaning: "to the pot cases, or all to one point", reasons: [] },
  { name: "shield", title: "Shielding", meaning: "a foil under the guard with a ground wire of its own", reasons: [] },
];
