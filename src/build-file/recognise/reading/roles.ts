import type { LayoutName } from "../../plans/layouts.ts";
import { type SwitchType, switchTable } from "../../switch-types.ts";
import { type Guard, namesOf, netAt, partOf } from "../guard.ts";
import { same } from "../same.ts";

const SELECTORS = ["lever-5", "lever-3", "toggle-3"] as const satisfies SwitchType[];
export type SelectorType = (typeof SELECTORS)[number];

/** Which of the plans' selectors a switch is, by its contacts; undefined where it is none. */
export function selectorType(guard: Guard, name: string): SelectorType | undefined {
  const table = switchTable(partOf(guard, name, "switch"));
  return SELECTORS.find((type) => same(switchTable({ type }).positions, table.positions));
}

/** A small switch of two poles, such as plans use for their options. */
export function isTwoWay(guard: Guard, name: string): boolean {
  return same(switchTable(partOf(guard, name, "switch")).positions, switchTable({ type: "dpdt" }).positions);
}

/** Items whose names are the plan's own stand in the plan's order, others as they come. */
export function inPlanOrder(names: readonly string[], base: string): string[] {
  const planned = names.map((_, i) => (names.length === 1 ? base : `${base}${i + 1}`));
  return planned.every((name) => names.includes(name)) ? planned : [...names];
}

export const USUAL_NAMES = ["bridge", "middle", "neck"];

/** Pickups from the bridge to the neck: by their distances, else by their names, else by where they sit on the guard. */
export function pickupsInOrder(guard: Guard): string[] {
  const names = namesOf(guard, "pickup");
  const far = (name: string) => {
    const coils = Object.values(partOf(guard, name, "pickup").coils);
    return coils.reduce((sum, coil) => sum + (coil.distance ?? Number.NaN), 0) / coils.length;
  };
  const keys = [far, (name: string) => (USUAL_NAMES.includes(name) ? USUAL_NAMES.indexOf(name) : Number.NaN)];
  keys.push((name) => partOf(guard, name, "pickup").place?.x ?? Number.NaN);
  const key = keys.find((candidate) => names.every((name) => Number.isFinite(candidate(name))));
  return key ? [...names].sort((a, b) => key(a) - key(b)) : names;
}

/** The net that most of what is always grounded lies in. */
export function groundNet(guard: Guard): number {
  const votes = new Map<number, number>();
  for (const { name, local, part } of guard.table.lugs) {
    const kind = guard.build.parts[part]!.kind;
    if (local !== "sleeve" && local !== "case" && local !== "shield" && kind !== "terminal") continue;
    const net = netAt(guard, name);
    votes.set(net, (votes.get(net) ?? 0) + 1);
  }
  return [...votes].sort(([, a], [, b]) => b - a)[0]?.[0] ?? -1;
}

/** Whether a cap from one of the pot's first lugs leads to ground, or its wiper does behind a cap, as with tones. */
function isToneByNets(guard: Guard, pot: string, ground: number): boolean {
  const ends = [netAt(guard, `${pot}.1`), netAt(guard, `${pot}.2`)].filter((net) => net !== ground);
  return namesOf(guard, "cap").some((cap) => {
    const [a, b] = [netAt(guard, `${cap}.a`), netAt(guard, `${cap}.b`)];
    return (a === ground && ends.includes(b)) || (b === ground && ends.includes(a));
  });
}

export interface Pots {
  readonly volumes: readonly string[];
  readonly tones: readonly string[];
}

export function potsByRole(guard: Guard, ground: number): Pots {
  const roles = namesOf(guard, "pot").map((name) => {
    const { role } = partOf(guard, name, "pot");
    return { name, role: role ?? (isToneByNets(guard, name, ground) ? "tone" : "volume") };
  });
  const named = (role: string) => roles.filter((pot) => pot.role === role).map(({ name }) => name);
  return { volumes: named("volume"), tones: named("tone") };
}

/** The guard's parts by what a plan would use them for. */
export interface Roles extends Pots {
  readonly layout: LayoutName;
  readonly selector: string | undefined;
  readonly pickups: readonly string[];
  readonly jack: string;
  readonly ground: number;
}
