import { layoutOf } from "../../plans/layouts.ts";
import { type Guard, netAt } from "../guard.ts";
import type { Sketch } from "../sketch.ts";
import type { Roles } from "./roles.ts";

/** Nets at which the signal can be tapped. */
export interface Signal {
  readonly selected: number;
  readonly output: number;
  /** Each pickup's throw on the signal pole, and on the other pole. */
  readonly throws: Readonly<Record<string, number>>;
  readonly toneThrows: Readonly<Record<string, number>>;
}

/** The throw of each pickup on a lever's pole, by the plan's names. */
export const THROWS: Readonly<Record<string, number>> = { bridge: 1, middle: 2, neck: 3 };

export function signalOf(guard: Guard, roles: Roles, pickups: Readonly<Record<string, string>>): Signal {
  const volume = roles.volumes[0]!;
  const output = netAt(guard, `${roles.jack}.tip`);
  const none = { selected: netAt(guard, `${volume}.3`), output, throws: {}, toneThrows: {} };
  const { selector } = roles;
  if (selector === undefined) return none;
  if (layoutOf(roles.layout).selector === "toggle-3") {
    const throws = { bridge: netAt(guard, `${selector}.A1`), neck: netAt(guard, `${selector}.A2`) };
    return { ...none, selected: netAt(guard, `${selector}.A0`), throws };
  }
  const leads = new Set(
    Object.values(pickups).flatMap((name) =>
      guard.table.lugs.filter(({ part }) => part === name).map((lug) => netAt(guard, lug.name)),
    ),
  );
  const fed = (throws: Readonly<Record<string, number>>) =>
    Object.values(throws).filter((net) => leads.has(net)).length;
  if (layoutOf(roles.layout).selector === "lever-3-pair") {
    const pairs = ["AB", "BA"].map(([one, other]) => ({
      bridge: netAt(guard, `${selector}.${one}1`),
      neck: netAt(guard, `${selector}.${other}3`),
    }));
    const throws = fed(pairs[0]!) >= fed(pairs[1]!) ? pairs[0]! : pairs[1]!;
    return { ...none, selected: netAt(guard, `${selector}.A0`), throws };
  }
  const throwsOf = (pole: string) =>
    Object.fromEntries(
      Object.entries(THROWS).map(([pickup, number]) => [pickup, netAt(guard, `${selector}.${pole}${number}`)]),
    );
  const [a, b] = [throwsOf("A"), throwsOf("B")];
  const isOnA = fed(a) >= fed(b);
  return {
    output,
    selected: netAt(guard, `${selector}.${isOnA ? "A" : "B"}0`),
    throws: isOnA ? a : b,
    toneThrows: isOnA ? b : a,
  };
}

/** The net of the pole that does not carry the signal. */
export function otherCommon(guard: Guard, selector: string, signal: Signal): number {
  const commons = ["A", "B"].map((pole) => ({ pole, throws: netAt(guard, `${selector}.${pole}1`) }));
  const other = commons.find(({ throws }) => throws === signal.toneThrows.bridge);
  return other ? netAt(guard, `${selector}.${other.pole}0`) : -1;
}

/** Where the pickup of a volume's own input is; the neck's volume comes first unless the wires say otherwise. */
export function owners(guard: Guard, roles: Roles, pickups: Readonly<Record<string, string>>): Sketch["volumes"] {
  if (layoutOf(roles.layout).volumes === 1) return [{ pot: roles.volumes[0]!, pickup: undefined }];
  const [first, second] = roles.volumes;
  const throwNet = (pickup: string) => netAt(guard, `${roles.selector}.${pickup === "bridge" ? "A1" : "A2"}`);
  const leads = (pickup: string) =>
    guard.table.lugs.filter(({ part }) => part === pickups[pickup]).map(({ name }) => netAt(guard, name));
  const serves = (pot: string | undefined, pickup: string) =>
    [2, 3].filter((lug) => {
      const net = netAt(guard, `${pot}.${lug}`);
      return net === throwNet(pickup) || leads(pickup).includes(net);
    }).length;
  const straight = serves(first, "neck") + serves(second, "bridge");
  const crossed = serves(first, "bridge") + serves(second, "neck");
  const names = crossed > straight ? ["bridge", "neck"] : ["neck", "bridge"];
  const isNamed = first === "volume1" && second === "volume2";
  const all = roles.volumes.map((pot, i) => ({ pot, pickup: names[i]! }));
  return isNamed || names[0] === "neck" ? all : all.reverse();
}
