import type { SwitchSpec } from "../../../build-file/switch-types.ts";
import type { StarFamily } from "../stars/star-state.ts";
import { type Contacts, contactsOf, type KnownSwitch, knownOf } from "./known-specs.ts";
import { renamings } from "./same-contacts.ts";

/** A known switch as it names the lugs of a family. */
export interface Reading {
  readonly spec: SwitchSpec;
  /** The person's first position is its last. */
  readonly reversed: boolean;
  /** Its own name for each lug of the family. */
  readonly lugs: readonly string[];
}

/** All known switches that are one contact table but for their lugs' names. */
export interface Family {
  readonly lugs: number;
  readonly positions: number;
  readonly contacts: Contacts;
  readonly readings: readonly Reading[];
}

function withReading(families: readonly Family[], { spec, table }: KnownSwitch, reversed: boolean): Family[] {
  const lugs = table.lugs.length;
  const contacts = contactsOf(table, reversed);
  for (const family of families) {
    const [way] = renamings(family.contacts, contacts, lugs, 1);
    if (!way) continue;
    const reading = { spec, reversed, lugs: way.map((at) => table.lugs[at]!) };
    return families.map((each) => (each === family ? { ...family, readings: [...family.readings, reading] } : each));
  }
  return [
    ...families,
    { lugs, positions: table.positions.length, contacts, readings: [{ spec, reversed, lugs: table.lugs }] },
  ];
}

/** What a switch of so many lugs and positions may be; the order of its positions may be found either way round. */
export function familiesOf(lugs: number, positions: number): readonly Family[] {
  return knownOf(lugs, positions).reduce<readonly Family[]>(
    (families, known) => withReading(withReading(families, known, false), known, true),
    [],
  );
}

/** The poles and throws of a family of plain poles, one throw a position each. */
export function starsOf(family: Family): StarFamily | undefined {
  const rotary = family.readings.find(({ spec }) => spec.type === "rotary");
  return rotary && { poles: rotary.spec.poles!, throws: rotary.spec.throws! };
}
