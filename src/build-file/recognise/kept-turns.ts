import type { Draft } from "../plans/draft.ts";
import type { Fit } from "./fit.ts";
import type { Guard } from "./guard.ts";
import { bleedPairs, splitPickups, tonePairs } from "./turns.ts";

type Rows = readonly (readonly [string, string])[];

const rowsOf = (draft: Draft): Rows => [...tonePairs(draft), ...bleedPairs(draft)];

/**
 * Which lug of the old plan stands at each lug of the guard, with the turns taken back that would matter under the new plan: of
 * parts in a row that are no row there, and of the coils of a pickup that is split there.
 */
export function keptTurns(
  guard: Guard,
  fit: Fit,
  plans: { old: Draft; next: Draft; inOld: ReadonlyMap<string, string> },
  names: ReadonlyMap<string, string>,
): Int32Array {
  const { old, next, inOld } = plans;
  const inNext = rowsOf(next).map((row) => row.map((name) => inOld.get(name)).join());
  const broken = rowsOf(old).filter((row) => !inNext.includes(row.join()));
  const split = [...splitPickups(next)].map((name) => inOld.get(name) ?? name);
  const topped = next.wires.flatMap(({ from, to }) => [from, to]).filter((lug) => /^tone\d?\.3$/.test(lug));
  const whole = topped.map((lug) => lug.slice(0, -2)).map((name) => inOld.get(name) ?? name);
  const straight = new Set([...broken.flat(), ...split, ...whole].map((name) => names.get(name)));
  return fit.roleOf.map((role, lug) => (straight.has(guard.table.lugs[lug]!.part) ? lug : role));
}
