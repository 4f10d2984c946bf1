import { hasCoilLeads } from "../../lug-names.ts";
import { layoutOf } from "../../plans/layouts.ts";
import { isReversed } from "../../plans/plan-pickups.ts";
import { type Guard, netAt, partOf } from "../guard.ts";
import type { Option } from "../sketch.ts";
import type { Roles } from "./roles.ts";
import type { Signal } from "./signal.ts";

/** The coil nearest the hot lead, by the joint between the coils; undefined where no joint shows it. */
function upperCoil(guard: Guard, name: string): { coil: string; joint: number } | undefined {
  const pickup = partOf(guard, name, "pickup");
  if (!hasCoilLeads(pickup)) return undefined;
  const leads = Object.entries(pickup.coils).map(([coil, values]) => {
    const [hot, ground] = isReversed(values) ? ["start", "finish"] : ["finish", "start"];
    return { coil, hot: netAt(guard, `${name}.${coil}.${hot}`), ground: netAt(guard, `${name}.${coil}.${ground}`) };
  });
  const [first, second] = leads as [(typeof leads)[0], (typeof leads)[0]];
  if (first.ground === second.hot) return { coil: first.coil, joint: first.ground };
  return second.ground === first.hot ? { coil: second.coil, joint: second.ground } : undefined;
}

/** The coil that a split would keep: as wired, else the first. */
export function keptCoil(guard: Guard, name: string): string {
  return upperCoil(guard, name)?.coil ?? Object.keys(partOf(guard, name, "pickup").coils)[0]!;
}

/** Splits that the lever's other pole makes. */
export function automaticSplits(
  guard: Guard,
  roles: Roles,
  pickups: Readonly<Record<string, string>>,
  signal: Signal,
): Option[] {
  if (layoutOf(roles.layout).selector !== "lever-5") return [];
  return ["bridge", "neck"].flatMap((pickup): Option[] => {
    const upper = upperCoil(guard, pickups[pickup]!);
    if (!upper || upper.joint === roles.ground || upper.joint !== signal.toneThrows[pickup]) return [];
    return [{ kind: "automatic", pickup, keeps: upper.coil }];
  });
}
