import type { Draft } from "../plans/draft.ts";
import { counterparts, newNames } from "./counterparts.ts";
import { type Guard, netAt } from "./guard.ts";

/** Everything that moving a guard from one plan to another goes by. */
export interface Move {
  readonly guard: Guard;
  readonly old: Draft;
  readonly next: Draft;
  /** The old plan's name of each part of the new plan that both have. */
  readonly inOld: ReadonlyMap<string, string>;
  /** The guard's name of each part of the old plan. */
  readonly names: ReadonlyMap<string, string>;
  /** The new guard's name of each part of the new plan. */
  readonly given: ReadonlyMap<string, string>;
  /** Parts of the guard that its plan has not, and that stay. */
  readonly extras: readonly string[];
  /** What becomes of the guard's part names; a part that goes has none. */
  readonly renamed: ReadonlyMap<string, string>;
}

/** The name of a lug of the guard on the new one; undefined where its part is gone. */
export function lugAfter(move: Pick<Move, "renamed">, lug: string): string | undefined {
  const [part = "", ...local] = lug.split(".");
  const name = move.renamed.get(part);
  return name === undefined ? undefined : [name, ...local].join(".");
}

function addedParts(guard: Guard, names: ReadonlyMap<string, string>): string[] {
  const used = new Set(names.values());
  return Object.keys(guard.build.parts).filter((name) => !used.has(name));
}

/** Whether every lug of an added part that was wired to the plan's parts still finds one of them. */
function hasHold(guard: Guard, name: string, added: readonly string[], stays: (part: string) => boolean): boolean {
  const own = guard.table.lugs.filter(({ part }) => part === name);
  return own.every((lug) => {
    const net = netAt(guard, lug.name);
    const others = guard.table.lugs.filter((other, i) => guard.netOf[i] === net && !added.includes(other.part));
    return others.length === 0 || others.some(({ part }) => stays(part));
  });
}

/** @param drawn the new plan's long form */
export function moveOf(guard: Guard, old: Draft, names: ReadonlyMap<string, string>, drawn: Draft): Move {
  const inOld = counterparts(old, drawn);
  // A part that the guard does without under the old plan it does without under the new one.
  const isMissing = (planName: string) => inOld.has(planName) && !names.has(inOld.get(planName)!);
  const left = Object.keys(drawn.parts).filter((planName) => !isMissing(planName));
  const added = addedParts(guard, names);
  const given = new Map([...newNames(drawn, inOld, names, added)].filter(([planName]) => left.includes(planName)));
  const renamed = new Map<string, string>();
  for (const [planName, name] of given) {
    const was = names.get(inOld.get(planName) ?? "");
    if (was !== undefined) renamed.set(was, name);
  }
  const extras = added.filter((name) => hasHold(guard, name, added, (part) => renamed.has(part)));
  for (const name of extras) renamed.set(name, name);
  return { guard, old, next: drawn, inOld, names, given, extras, renamed };
}
