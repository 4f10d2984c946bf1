import type { SwitchBody } from "../../../build-file/bodies/body-names.ts";
import type { SwitchSpec } from "../../../build-file/switch-types.ts";
import type { BodyGuess } from "../bodies/body-guesses.ts";
import { familiesOf } from "../known/families.ts";
import type { Contacts } from "../known/known-specs.ts";
import { renamings } from "../known/same-contacts.ts";

/** A known switch that has a contact table, with its own name for each found lug. */
export interface FoundReading {
  readonly spec: SwitchSpec;
  /** Where the lugs sit as in one of its bodies, this one. */
  readonly body: SwitchBody | undefined;
  /** The person's first position is its last. */
  readonly reversed: boolean;
  readonly lugs: readonly string[];
}

const sameTable = (a: Contacts, b: Contacts) => a.every((mask, pair) => mask === b[pair]);

/**
 * The known switches that have a contact table, those whose body has its lugs just so before the others, and within them what
 * leaves the positions as the person counts them.
 */
export function readingsOf(
  contacts: Contacts,
  lugs: number,
  positions: number,
  guesses: readonly BodyGuess[],
): FoundReading[] {
  const sitting = guesses.filter((guess) => sameTable(guess.contacts, contacts));
  const named = familiesOf(lugs, positions).flatMap((family): FoundReading[] => {
    const [way] = renamings(contacts, family.contacts, lugs, 1);
    if (!way) return [];
    return family.readings.map(({ spec, reversed, lugs: names }) => ({
      spec,
      body: undefined,
      reversed,
      lugs: way.map((at) => names[at]!),
    }));
  });
  const sat = sitting.map(({ spec, body, reversed, lugs: names }) => ({ spec, body, reversed, lugs: names }));
  return [...sat, ...named.sort((a, b) => Number(a.reversed) - Number(b.reversed))];
}
