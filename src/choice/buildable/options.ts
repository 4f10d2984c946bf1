import type { Pickup } from "../../build-file/schema.ts";

/** Something that one switch does to the pickups, up against down. */
export type Option =
  | { readonly kind: "split"; readonly pickup: string; readonly keeps: string }
  | { readonly kind: "seriesParallel"; readonly pickup: string }
  | { readonly kind: "phase"; readonly pickup: string }
  | { readonly kind: "seriesLink"; readonly pickups: readonly [string, string] }
  | { readonly kind: "alwaysOn"; readonly pickup: string };

/** What one push-pull or small switch works: its two poles move together. */
export type Worked = readonly Option[];

/** A split that the lever makes by itself. */
export interface AutomaticSplit {
  readonly pickup: string;
  readonly position: number;
  readonly keeps: string;
}

const POLES: Readonly<Record<Option["kind"], number>> = {
  split: 1,
  seriesParallel: 2,
  phase: 2,
  seriesLink: 2,
  alwaysOn: 1,
};

export const hasFourLeads = ({ coils, conductors }: Pickup) =>
  Object.keys(coils).length === 2 && (conductors ?? 4) === 4;

/** Everything that can be switched with pickups in these places, the bridge's first. */
export function optionsFor(placed: ReadonlyMap<string, Pickup>): Option[] {
  const names = [...placed.keys()];
  const ofCoils = [...placed].flatMap(([pickup, part]): Option[] => {
    if (!hasFourLeads(part)) return [];
    const splits = Object.keys(part.coils).map((keeps): Option => ({ kind: "split", pickup, keeps }));
    return [...splits, { kind: "seriesParallel", pickup }];
  });
  if (names.length === 1) return ofCoils;
  const pairs = names.flatMap((first) =>
    names.flatMap((second) => (first === second ? [] : [[first, second] as const])),
  );
  return [
    ...ofCoils,
    ...names.map((pickup): Option => ({ kind: "phase", pickup })),
    ...pairs.map((pickups): Option => ({ kind: "seriesLink", pickups })),
    ...names.map((pickup): Option => ({ kind: "alwaysOn", pickup })),
  ];
}

/** What can only be there once: one way to work a pickup's coils, its phase, one link, one pickup that is always on. */
function claimOf(option: Option): string {
  switch (option.kind) {
    case "split":
    case "seriesParallel":
      return `coils ${option.pickup}`;
    case "phase":
      return `phase ${option.pickup}`;
    case "seriesLink":
    case "alwaysOn":
      return option.kind;
  }
}

/** Each option alone, and two of one pole together. */
function workedTogether(options: readonly Option[]): Worked[] {
  const single = options.filter(({ kind }) => POLES[kind] === 1);
  const pairs = single.flatMap((first, index) =>
    single.slice(index + 1).flatMap((second) => (claimOf(first) === claimOf(second) ? [] : [[first, second]])),
  );
  return [...options.map((option) => [option]), ...pairs];
}

/** Every set of up to so many switches whose options go together; which switch works which makes no other sound. */
export function* switchings(options: readonly Option[], switches: number): Generator<readonly Worked[]> {
  const choices = workedTogether(options);
  function* from(index: number, chosen: readonly Worked[], claims: ReadonlySet<string>): Generator<readonly Worked[]> {
    yield chosen;
    if (chosen.length === switches) return;
    for (let next = index; next < choices.length; next++) {
      const own = choices[next]!.map(claimOf);
      if (own.some((claim) => claims.has(claim))) continue;
      yield* from(next + 1, [...chosen, choices[next]!], new Set([...claims, ...own]));
    }
  }
  yield* from(0, [], new Set());
}

const AUTOMATIC: readonly (readonly [pickup: string, position: number])[] = [
  ["bridge", 2],
  ["neck", 4],
];

/** Every set of splits that a five-position lever can make. */
export function automaticSplits(placed: ReadonlyMap<string, Pickup>): AutomaticSplit[][] {
  return AUTOMATIC.reduce<AutomaticSplit[][]>(
    (sets, [pickup, position]) => {
      const part = placed.get(pickup);
      if (!part || !hasFourLeads(part)) return sets;
      const own = Object.keys(part.coils).map((keeps) => ({ pickup, position, keeps }));
      return sets.flatMap((set) => [set, ...own.map((split) => [...set, split])]);
    },
    [[]],
  );
}

/** The pickups whose coils or leads switches work; the lever splits only others. */
export function takenBy(switched: readonly Worked[]): ReadonlySet<string> {
  const taken = new Set<string>();
  for (const option of switched.flat()) {
    if (option.kind === "seriesLink") for (const pickup of option.pickups) taken.add(pickup);
    else if (option.kind !== "alwaysOn") taken.add(option.pickup);
  }
  return taken;
}
