import type { Build } from "../../../build-file/schema.ts";
import { Wiring } from "../../../wiring/nets.ts";
import type { Bench, Fault } from "../fault.ts";
import { jointFaults, wireFaults } from "./joint-faults.ts";
import { capFaults, coilFaults, potValueFaults } from "./part-faults.ts";
import { caseShorts, neighbourShorts, shieldShorts } from "./short-faults.ts";
import { jackSwaps, pickupExchanges, pickupSwaps, potSwaps } from "./swap-faults.ts";
import { contactFaults, exchangedWireFaults, wrongLugFaults } from "./switch-faults.ts";

function benchOf(build: Build): Bench {
  const wiring = new Wiring(build);
  const { lugs } = wiring;
  const { netOfLug } = wiring.wiredNets();
  const wires = build.wires.map((wire) => ({ from: lugs.indexOf(wire.from), to: lugs.indexOf(wire.to) }));
  const wireCounts = new Int32Array(lugs.lugs.length);
  for (const { from, to } of wires) {
    wireCounts[from]!++;
    wireCounts[to]!++;
  }
  return {
    build,
    lug: (name) => ({ index: lugs.indexOf(name), name }),
    nameAt: (index) => lugs.nameAt(index),
    wires,
    joined: (a, b) => netOfLug[a] === netOfLug[b],
    wiresAt: (lug) => wireCounts[lug]!,
  };
}

const MAKERS = [
  wireFaults,
  jointFaults,
  neighbourShorts,
  caseShorts,
  shieldShorts,
  pickupSwaps,
  potSwaps,
  jackSwaps,
  coilFaults,
  capFaults,
  potValueFaults,
  contactFaults,
  wrongLugFaults,
  exchangedWireFaults,
  pickupExchanges,
];

/** Every single fault that this build can have, in an order that depends on the build alone. */
export function singleFaults(build: Build): Fault[] {
  const bench = benchOf(build);
  return MAKERS.flatMap((faultsOf) => faultsOf(bench));
}
