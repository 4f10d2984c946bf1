import { lugsOf, type SmallGuard, type SmallWire } from "./small-guards.ts";

/** Something with two ends that are each on a lug, or loose (null). An end that is fixed stays where it is. */
export interface Piece {
  readonly ends: readonly [string | null, string | null];
  readonly fixed: readonly [boolean, boolean];
  /** The one lug that its free end reaches; any where absent. */
  readonly reaches?: string;
}

/** Leads that are twisted together: one joint, which frees both. */
export interface Splice {
  readonly leads: readonly [string, string];
}

export interface Workbench {
  /** Lugs of the parts that go out carry a mark before their name. */
  readonly lugs: readonly string[];
  readonly pieces: readonly Piece[];
  readonly splices: readonly Splice[];
  /** Lugs of the guard as wanted by net. */
  readonly netOf: ReadonlyMap<string, number>;
}

export const isGone = (lug: string) => lug.startsWith("gone:");

function netsOf(guard: SmallGuard): Map<string, number> {
  const net = new Map(lugsOf(guard).map((lug, index) => [lug, index]));
  for (const { lugs } of guard.wires) {
    const [a, b] = lugs.map((lug) => net.get(lug)!);
    for (const [lug, number] of net) if (number === b) net.set(lug, a!);
  }
  return net;
}

const grows = (wires: readonly SmallWire[], lug: string) =>
  wires.some(({ lugs, grown }) => lugs.some((at, end) => at === lug && grown[end]));
const isEyelet = (wires: readonly SmallWire[], lug: string) =>
  wires.some(({ lugs, how }) => how === "wire" && lugs.includes(lug));

/** A leg that nothing is made of yet; a pickup's lug on which wires are soldered is an eyelet and has none. */
function hasFreeLeg(lug: string, found: readonly SmallWire[], wanted: readonly SmallWire[]): boolean {
  if (grows(found, lug)) return false;
  if (lug.startsWith("cap.")) return true;
  if (!lug.startsWith("pickup.")) return false;
  return !isEyelet(found, lug) && (grows(wanted, lug) || !isEyelet(wanted, lug));
}

/** What lies on the bench when the guard as found is to become the guard as wanted. */
export function workbenchOf(from: SmallGuard, to: SmallGuard): Workbench {
  const stays = (part: string) => JSON.stringify(from.parts[part]) === JSON.stringify(to.parts[part]);
  const named = (lug: string) => (stays(lug.split(".")[0]!) ? lug : `gone:${lug}`);
  const foundWires = from.wires.map((wire) => ({ ...wire, lugs: wire.lugs.map(named) as [string, string] }));
  const isSplice = ({ grown }: SmallWire) => grown[0] && grown[1];
  const laid = foundWires
    .filter((wire) => !isSplice(wire))
    .map(({ lugs, grown, how }): Piece => {
      const reaches = how === "bent lug" ? lugs.find((lug) => lug.endsWith("case")) : undefined;
      return { ends: lugs, fixed: grown, ...(reaches === undefined ? {} : { reaches }) };
    });
  const lugs = lugsOf(to);
  const legs = lugs
    .filter((lug) => hasFreeLeg(lug, foundWires, to.wires))
    .map((lug): Piece => ({ ends: [lug, null], fixed: [true, false] }));
  const bent = ["pot.1", "pot.2", "pot.3"]
    .filter((lug) => !laid.some(({ ends, reaches }) => reaches !== undefined && ends.includes(lug)))
    .map((lug): Piece => ({ ends: [lug, null], fixed: [true, false], reaches: "pot.case" }));
  return {
    lugs,
    pieces: [...laid, ...legs, ...bent],
    splices: foundWires.filter(isSplice).map((wire) => ({ leads: wire.lugs })),
    netOf: netsOf(to),
  };
}
