/**
 * Contact tables of the trade's switches: for every position, the groups of lugs that it joins. Poles are lettered; lug 0 of
 * a pole is its common. Tables are common practice, no source, unless noted.
 */
export interface SwitchTable {
  readonly lugs: readonly string[];
  /** positions[i] is position i + 1: groups of lugs joined there. */
  readonly positions: readonly (readonly (readonly string[])[])[];
}

const POLE_LETTERS = "ABCDEFGH";

/** The same throws for every pole: throwsByPosition[i] lists the throws that position i + 1 joins to the common. */
function poles(count: number, throwCount: number, throwsByPosition: readonly (readonly number[])[]): SwitchTable {
  const letters = [...POLE_LETTERS.slice(0, count)];
  const throwNumbers = Array.from({ length: throwCount + 1 }, (_, index) => index);
  return {
    lugs: letters.flatMap((letter) => throwNumbers.map((number) => `${letter}${number}`)),
    positions: throwsByPosition.map((closed) =>
      letters.map((letter) => [`${letter}0`, ...closed.map((number) => `${letter}${number}`)]),
    ),
  };
}

function oneByOne(count: number, throwCount: number): SwitchTable {
  return poles(
    count,
    throwCount,
    Array.from({ length: throwCount }, (_, index) => [index + 1]),
  );
}

function onOnOn(centre: readonly (readonly string[])[]): SwitchTable {
  const ends = poles(2, 2, [[1], [2]]);
  return { lugs: ends.lugs, positions: [ends.positions[0]!, centre, ends.positions[1]!] };
}

/** The lug of a switch's own metal, which no position joins to anything. */
export const FRAME_LUG = "frame";

function withMetal({ lugs, positions }: SwitchTable): SwitchTable {
  return { lugs: [...lugs, FRAME_LUG], positions };
}

const FIXED_TYPES = ["lever-3", "lever-5", "lever-5-four-pole", "toggle-3", "spdt", "dpdt"] as const;

const FIXED_TABLES: Readonly<Record<(typeof FIXED_TYPES)[number], SwitchTable>> = {
  "lever-3": oneByOne(2, 3),
  "lever-5": poles(2, 3, [[1], [1, 2], [2], [2, 3], [3]]),
  "lever-5-four-pole": oneByOne(4, 5),
  "toggle-3": withMetal(poles(1, 2, [[1], [1, 2], [2]])),
  spdt: oneByOne(1, 2),
  dpdt: oneByOne(2, 2),
};

/** Both makes of the on-on-on switch: which throw each pole rests on in the centre. */
const ON_ON_ON_CENTRES = {
  "A1-B2": [
    ["A0", "A1"],
    ["B0", "B2"],
  ],
  "A2-B1": [
    ["A0", "A2"],
    ["B0", "B1"],
  ],
} as const;

export const ON_ON_ON_PATTERNS = ["A1-B2", "A2-B1"] as const satisfies (keyof typeof ON_ON_ON_CENTRES)[];
/** Types that need no further numbers, so that their name alone describes them. */
export const NAMED_SWITCH_TYPES = [...FIXED_TYPES, "dpdt-on-on-on"] as const;
export const SWITCH_TYPES = [...NAMED_SWITCH_TYPES, "rotary"] as const;
export const MAX_ROTARY_POLES = POLE_LETTERS.length;
export const MAX_THROWS = 12;

export type SwitchType = (typeof SWITCH_TYPES)[number];

export interface SwitchSpec {
  readonly type?: SwitchType | undefined;
  readonly centre?: keyof typeof ON_ON_ON_CENTRES | undefined;
  readonly poles?: number | undefined;
  readonly throws?: number | undefined;
  readonly positions?: SwitchTable["positions"] | undefined;
}

/** The contact table of a switch part, from its type or its own `positions`. */
export function switchTable(spec: SwitchSpec): SwitchTable {
  if (spec.positions) return { lugs: [...new Set(spec.positions.flat(2))], positions: spec.positions };
  const type = spec.type ?? "spdt";
  if (type === "rotary") return oneByOne(spec.poles ?? 1, spec.throws ?? 2);
  if (type === "dpdt-on-on-on") return onOnOn(ON_ON_ON_CENTRES[spec.centre ?? "A1-B2"]);
  return FIXED_TABLES[type];
}
