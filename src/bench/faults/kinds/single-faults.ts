import type { Build } from "../../../build-file/schema.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../../checkpoint.ts";
import type { Fault } from "../fault.ts";
import { guardWiringOf } from "./guard-wiring.ts";
import { jointFaults, wireFaults } from "./joint-faults.ts";
import { howlingPickups, jackAndCable, looseWires, potWear, switchWear } from "./moving-faults.ts";
import { capFaults, coilFaults, potValueFaults } from "./part-faults.ts";
import { caseShorts, neighbourShorts, shieldShorts } from "./short-faults.ts";
import { strayLeads } from "./stray-leads.ts";
import { jackSwaps, pickupExchanges, pickupSwaps, potSwaps } from "./swap-faults.ts";
import { contactFaults, exchangedWireFaults, wrongLugFaults } from "./switch-faults.ts";

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
  strayLeads,
  potWear,
  switchWear,
  looseWires,
  jackAndCable,
  howlingPickups,
];

/** Every single fault that this build can have, in an order that depends on the build alone. */
export function singleFaults(build: Build, { checkpoint }: Checkpoint = NO_CHECKPOINT): Fault[] {
  const guard = guardWiringOf(build);
  return MAKERS.flatMap((faultsOf) => {
    checkpoint();
    return faultsOf(guard);
  });
}
