/** What a person typed of one cavity, millimetres as text. */
export interface CavityEntry {
  readonly name: string;
  readonly depth: string;
  /** A point a line: "x, y". */
  readonly points: string;
  /** Of a line from a photograph; empty for the usual. */
  readonly tolerance: string;
}

export const PART_FIELDS = [
  "outline",
  "size",
  "points",
  "depth",
  "ears",
  "side",
  "reach",
  "width",
  "poleSpacing",
  "bushing",
  "hole",
] as const;
export type PartField = (typeof PART_FIELDS)[number];
export type PartEntry = Readonly<Partial<Record<PartField, string>>>;

export const GUARD_FIELDS = [
  "tolerance",
  "thickness",
  "stack",
  "screws",
  "screwDiameter",
  "edge",
  "nut",
  "bridge",
  "scale",
] as const;
export type GuardField = (typeof GUARD_FIELDS)[number];
export type GuardEntry = Readonly<Partial<Record<GuardField, string>>>;

/** Everything that was typed of a body and of what is to go into it. */
export interface Entries {
  readonly cavities: readonly CavityEntry[];
  readonly parts: Readonly<Record<string, PartEntry>>;
  readonly guard: GuardEntry;
}

const emptyCavity = (number: number): CavityEntry => ({
  name: number === 1 ? "control cavity" : `cavity ${number}`,
  depth: "",
  points: "",
  tolerance: "",
});

/** One more, of a name that none has: numbers repeat where cavities were removed. */
export function nextCavity(cavities: readonly CavityEntry[]): CavityEntry {
  for (let number = cavities.length + 1; ; number++) {
    const next = emptyCavity(number);
    if (!cavities.some(({ name }) => name === next.name)) return next;
  }
}

export const NO_ENTRIES: Entries = { cavities: [emptyCavity(1)], parts: {}, guard: {} };

/** Whether there is anything to ask about. */
export const isBare = ({ cavities, parts }: Entries): boolean =>
  cavities.every(({ points }) => points.trim() === "") &&
  Object.values(parts).every(({ outline = "" }) => outline === "");
