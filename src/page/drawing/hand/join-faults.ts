import type { FindingCode } from "../../../bench/audit/finding-codes.ts";
import type { Build } from "../../../build-file/schema.ts";
import { Wiring } from "../../../wiring/nets.ts";
import type { Fault } from "../../engine/bench-desk.ts";

/** While one of these stands, the guard is not wired to the end, and much that is missing cannot show. */
const UNFINISHED: readonly FindingCode[] = ["jack-unwired", "dead-position", "pickup-silent"];

/** What a wire makes wrong by being there, whatever else is missing still. */
const MADE_BY_A_WIRE: readonly FindingCode[] = [
  "hot-shorted",
  "jack-swapped",
  "case-hot",
  "strings-hot",
  "shield-hot",
  "coils-out-of-phase",
  "unused-lug-touches",
];

function isKnown(fault: Fault, present: readonly Fault[]): boolean {
  return present.some(({ code, lugs }) => code === fault.code && lugs.some((lug) => fault.lugs.includes(lug)));
}

/** The faults that a join brings; in a guard that is not wired to the end, only those that no further wire could mend. */
export function newFaults(after: readonly Fault[], present: readonly Fault[]): Fault[] {
  const isUnfinished = present.some(({ code }) => UNFINISHED.includes(code));
  return after.filter((fault) => !isKnown(fault, present) && (!isUnfinished || MADE_BY_A_WIRE.includes(fault.code)));
}

interface JoinQuestion {
  readonly build: Build;
  /** The wire in `build.wires` whose end is being moved, if any. */
  readonly moved: number | undefined;
  readonly from: string;
  /** Lugs, those first that are wanted first. */
  readonly targets: readonly string[];
  readonly faults: (build: Build) => Promise<readonly Fault[]>;
  readonly isWanted: () => boolean;
  /** Told anew whenever more is known: why a wire to a lug would make a fault. */
  readonly found: (warnings: ReadonlyMap<string, string>) => void;
}

/** Tries a wire from one lug to each net, one after the other for as long as it is wanted. */
export async function findJoinFaults(question: JoinQuestion): Promise<void> {
  const { build, moved, from, targets, faults, isWanted, found } = question;
  const base = { ...build, wires: build.wires.filter((_, index) => index !== moved) };
  const wiring = new Wiring(base);
  const { netOfLug } = wiring.wiredNets();
  const netOf = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)]!;
  const present = await faults(build);
  const warnings = new Map<string, string>();
  const asked = new Set([netOf(from)]);
  for (const to of targets) {
    const net = netOf(to);
    if (asked.has(net)) continue;
    asked.add(net);
    if (!isWanted()) return;
    const [fault] = newFaults(await faults({ ...base, wires: [...base.wires, { from, to }] }), present);
    if (!fault) continue;
    for (const lug of targets) if (netOf(lug) === net) warnings.set(lug, fault.message);
    if (isWanted()) found(new Map(warnings));
  }
}
