import { hasCoilLeads } from "../lug-names.ts";
import type { Draft } from "../plans/draft.ts";
import { isReversed } from "../plans/plan-pickups.ts";
import { type Guard, netAt } from "./guard.ts";

type Swaps = readonly (readonly [number, number])[];

/** Ways in which a part, or two in a row, can be wired the other way round and still be the same to the signal and the hand. */
export interface Turn {
  readonly ways: readonly Swaps[];
}

/** Both lugs by name; nothing where the guard has not both. */
function swapOf(guard: Guard, a: string, b: string): Swaps {
  const [first, second] = [guard.table.find(a), guard.table.find(b)];
  return first === undefined || second === undefined ? [] : [[first, second]];
}

/** Every choice of some of the swaps. */
function subsets(all: readonly Swaps[]): Swaps[] {
  const [first, ...rest] = all;
  if (!first) return [[]];
  const without = subsets(rest);
  return [...without, ...without.map((some) => [...first, ...some])];
}

/** Poles A and B of a switch that has two alike. */
function polesTurn(guard: Guard, control: string): Turn[] {
  const swaps = [0, 1, 2, 3].flatMap((number) => swapOf(guard, `${control}.A${number}`, `${control}.B${number}`));
  return swaps.length > 0 ? [{ ways: [swaps] }] : [];
}

function coilsTurn(guard: Guard, name: string, isSplit: boolean): Turn[] {
  const part = guard.build.parts[name];
  if (part?.kind !== "pickup" || !hasCoilLeads(part) || isSplit) return [];
  const [first, second] = Object.entries(part.coils).map(([coil, values]) => {
    const leads = isReversed(values) ? ["start", "finish"] : ["finish", "start"];
    return leads.map((lead) => `${name}.${coil}.${lead}`);
  });
  return [{ ways: [[...swapOf(guard, first![0]!, second![0]!), ...swapOf(guard, first![1]!, second![1]!)]] }];
}

const legs = (guard: Guard, name: string) => swapOf(guard, `${name}.a`, `${name}.b`);

/** Nobody minds which of two parts in a row comes first: here the second's legs trade places with the first's lugs. */
function rowTurn(guard: Guard, first: readonly [string, string], second: readonly [string, string]): Turn {
  const trade = [...swapOf(guard, first[0], second[0]), ...swapOf(guard, first[1], second[1])];
  return { ways: subsets([swapOf(guard, ...first), swapOf(guard, ...second), trade]) };
}

/** Whether lug 3 of a pot stands free, so that lugs 1 and 2 are a resistor to be turned at will. */
export function isTopFree(guard: Guard, pot: string): boolean {
  const net = netAt(guard, `${pot}.3`);
  return guard.netOf.filter((other) => other === net).length === 1;
}

/** Whether a split, which tells a pickup's coils apart, is drawn in a plan's long form. */
export type IsSplit = (planName: string) => boolean;

const hasTwoLugs = (draft: Draft, lugs: readonly string[]) =>
  draft.wires.filter(({ from, to }) => lugs.includes(from) || lugs.includes(to)).length === 1;

export function tonePairs(draft: Draft): [pot: string, cap: string][] {
  return [...tonePot(draft)].filter(([pot, cap]) => hasTwoLugs(draft, [`${pot}.2`, `${cap}.a`]));
}

function tonePot(draft: Draft): Map<string, string> {
  const pairs = new Map<string, string>();
  for (const { from, to } of draft.wires)
    if (/^cap\d?\.a$/.test(from)) pairs.set(to.replace(/\.2$/, ""), from.replace(/\.a$/, ""));
  return pairs;
}

export function bleedPairs(draft: Draft): [cap: string, resistor: string][] {
  return draft.wires.flatMap(({ from, to }): [string, string][] =>
    /^bleed\d?\.b$/.test(from) && /^bleedResistor\d?\.a$/.test(to) ? [[from.slice(0, -2), to.slice(0, -2)]] : [],
  );
}

/** Pickups of which one coil alone can sound, so that it matters which. */
export function splitPickups(draft: Draft): Set<string> {
  const meets = new Map<string, number>();
  for (const { from, to } of draft.wires) {
    for (const lug of [from, to]) if (lug.split(".").length === 3) meets.set(lug, (meets.get(lug) ?? 0) + 1);
  }
  const split = new Set<string>();
  for (const { from, to } of draft.wires) {
    const [pickup] = from.split(".");
    const isJoint = draft.parts[pickup!]?.kind === "pickup" && to.startsWith(`${pickup}.`);
    if (isJoint && (meets.get(from)! > 1 || meets.get(to)! > 1)) split.add(pickup!);
  }
  return split;
}

/**
 * The turns that leave a plan's guard the same: switch poles that are alike, legs of caps and resistors, a tone's pot and cap in
 * either order, its lugs 1 and 2 where lug 3 is free, and the coils of a humbucker that is never split.
 */
export function turnsOf(guard: Guard, draft: Draft, names: ReadonlyMap<string, string>): Turn[] {
  const split = splitPickups(draft);
  const turns: Turn[] = [];
  const inRow = new Set<string>();
  const at = (planName: string) => names.get(planName);
  for (const [name, part] of Object.entries(draft.parts)) {
    const here = at(name);
    if (here === undefined) continue;
    if (part.kind === "switch") turns.push(...polesTurn(guard, here));
    if (part.kind === "pot" && part.drives) turns.push(...polesTurn(guard, `${here}.s`));
    if (part.kind === "pickup") turns.push(...coilsTurn(guard, here, split.has(name)));
  }
  for (const [pot, cap] of tonePairs(draft)) {
    const [track, legged] = [at(pot), at(cap)];
    if (track === undefined || legged === undefined || !isTopFree(guard, track)) continue;
    for (const name of [pot, cap]) inRow.add(name);
    turns.push(rowTurn(guard, [`${track}.1`, `${track}.2`], [`${legged}.a`, `${legged}.b`]));
  }
  for (const [cap, resistor] of bleedPairs(draft)) {
    const [first, second] = [at(cap), at(resistor)];
    if (first === undefined || second === undefined) continue;
    for (const name of [cap, resistor]) inRow.add(name);
    turns.push(rowTurn(guard, [`${first}.a`, `${first}.b`], [`${second}.a`, `${second}.b`]));
  }
  for (const [name, part] of Object.entries(draft.parts)) {
    const here = at(name);
    if (here === undefined || inRow.has(name)) continue;
    if (part.kind === "cap" || part.kind === "resistor") turns.push({ ways: [legs(guard, here)] });
    if (part.kind === "pot" && part.role === "tone" && isTopFree(guard, here))
      turns.push({ ways: [swapOf(guard, `${here}.1`, `${here}.2`)] });
  }
  return turns;
}
