import {
  MAX_ROTARY_POLES,
  MAX_THROWS,
  NAMED_SWITCH_TYPES,
  ON_ON_ON_PATTERNS,
  type SwitchSpec,
  type SwitchTable,
  switchTable,
} from "../../../build-file/switch-types.ts";

const named = NAMED_SWITCH_TYPES.flatMap((type): SwitchSpec[] =>
  type === "dpdt-on-on-on" ? ON_ON_ON_PATTERNS.map((centre) => ({ type, centre })) : [{ type }],
);

const rotary = Array.from({ length: MAX_ROTARY_POLES }, (_, pole) =>
  Array.from(
    { length: MAX_THROWS - 1 },
    (_, way): SwitchSpec => ({ type: "rotary", poles: pole + 1, throws: way + 2 }),
  ),
).flat();

/** Every switch that a build file knows by name, the named before the rotary ones. */
const KNOWN_SPECS: readonly SwitchSpec[] = [...named, ...rotary];

export interface KnownSwitch {
  readonly spec: SwitchSpec;
  readonly table: SwitchTable;
}

const KNOWN: readonly KnownSwitch[] = KNOWN_SPECS.map((spec) => ({ spec, table: switchTable(spec) }));

/** The known switches of so many lugs and positions. */
export function knownOf(lugs: number, positions: number): KnownSwitch[] {
  return KNOWN.filter(({ table }) => table.lugs.length === lugs && table.positions.length === positions);
}

/** A contact table as bits: `[a * lugs + b]` has bit p where the two are joined in position p + 1. */
export type Contacts = Int32Array;

export function contactsOf({ lugs, positions }: SwitchTable, isReversed = false): Contacts {
  const indexOf = new Map(lugs.map((lug, index) => [lug, index]));
  const contacts = new Int32Array(lugs.length ** 2);
  const inOrder = isReversed ? [...positions].reverse() : positions;
  for (const [position, groups] of inOrder.entries())
    for (const group of groups)
      for (const a of group)
        for (const b of group) if (a !== b) contacts[indexOf.get(a)! * lugs.length + indexOf.get(b)!]! |= 1 << position;
  return contacts;
}
