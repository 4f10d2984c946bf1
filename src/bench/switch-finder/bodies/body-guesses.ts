import { switchBodies } from "../../../build-file/bodies/bodies-of.ts";
import type { SwitchBody } from "../../../build-file/bodies/body-names.ts";
import { lugSpots } from "../../../build-file/bodies/lug-spots.ts";
import type { PartOf } from "../../../build-file/schema.ts";
import { type SwitchSpec, switchTable } from "../../../build-file/switch-types.ts";
import { type Contacts, contactsOf, knownOf } from "../known/known-specs.ts";
import type { FoundLug } from "../question.ts";
import { gridOfFound, gridOfSpots, waysToHold } from "./grid.ts";

/** A known switch in one of its bodies, laid over the lugs as they were found. */
export interface BodyGuess {
  readonly spec: SwitchSpec;
  readonly body: SwitchBody;
  readonly reversed: boolean;
  /** The type's lug for each found one. */
  readonly lugs: readonly string[];
  /** Between found lugs. */
  readonly contacts: Contacts;
  /** Against the other guesses; they need not make 1. */
  readonly weight: number;
}

/** A body that is not the usual one, and positions counted from the other end. Ours, no source. */
const OTHER_BODY = 0.5;
const REVERSED = 0.5;

/** A family's contacts in the order of the found lugs. */
function contactsOfLugs(contacts: Contacts, order: ArrayLike<number>): Contacts {
  const lugs = order.length;
  const found = new Int32Array(lugs * lugs);
  for (let a = 0; a < lugs; a++)
    for (let b = 0; b < lugs; b++) found[a * lugs + b] = contacts[order[a]! * lugs + order[b]!]!;
  return found;
}

interface Laid {
  readonly body: SwitchBody;
  readonly lugs: readonly string[];
  readonly weight: number;
}

/** A switch's bodies laid over found rows of as many lugs each. */
function laidOver(spec: SwitchSpec, found: readonly (readonly string[])[], lugs: readonly FoundLug[]): Laid[] {
  const part = { kind: "switch", ...spec } as PartOf<"switch">;
  const names = lugs.map(({ name }) => name);
  const shape = (grid: readonly (readonly string[])[]) => grid.map((row) => row.length).join();
  return switchBodies(part).flatMap(({ name: body }, index) =>
    waysToHold(gridOfSpots(lugSpots({ ...part, body })))
      .filter(({ grid }) => shape(grid) === shape(found))
      .map(({ grid, weight }): Laid => {
        const typeLug = new Map(found.flat().map((name, at) => [name, grid.flat()[at]!]));
        return {
          body,
          lugs: names.map((name) => typeLug.get(name)!),
          weight: index === 0 ? weight : weight * OTHER_BODY,
        };
      }),
  );
}

function guessesOf(spec: SwitchSpec, laid: Laid): BodyGuess[] {
  const table = switchTable(spec);
  const order = laid.lugs.map((lug) => table.lugs.indexOf(lug));
  return [false, true].map((reversed) => ({
    spec,
    ...laid,
    reversed,
    contacts: contactsOfLugs(contactsOf(table, reversed), order),
    weight: laid.weight * (reversed ? REVERSED : 1),
  }));
}

/** What the rows in which the lugs sit make likely, the likeliest first; none where it was not told how they sit. */
export function bodyGuesses(lugs: readonly FoundLug[], positions: number): BodyGuess[] {
  const found = gridOfFound(lugs);
  if (!found) return [];
  const fitting = knownOf(lugs.length, positions).filter(({ spec }) => spec.type !== "rotary");
  return fitting
    .flatMap(({ spec }) => laidOver(spec, found, lugs).flatMap((laid) => guessesOf(spec, laid)))
    .sort((a, b) => b.weight - a.weight);
}

/** Guesses that are one contact table taken together. */
export function differentTables(
  guesses: readonly BodyGuess[],
): { readonly contacts: Contacts; readonly share: number }[] {
  const byTable = new Map<string, { contacts: Contacts; weight: number }>();
  for (const { contacts, weight } of guesses) {
    const key = contacts.join();
    byTable.set(key, { contacts, weight: weight + (byTable.get(key)?.weight ?? 0) });
  }
  const sum = guesses.reduce((total, { weight }) => total + weight, 0);
  return [...byTable.values()].map(({ contacts, weight }) => ({ contacts, share: weight / sum }));
}
