import type { Fault } from "../../bench/faults/fault.ts";
import { JOINT_OHMS } from "../../bench/faults/hypotheses/other-values.ts";
import { guardWiringOf } from "../../bench/faults/kinds/guard-wiring.ts";
import { resistivePlaces } from "../../bench/faults/kinds/resistive-joints.ts";
import { singleFaults } from "../../bench/faults/kinds/single-faults.ts";
import { wrongCapFaults, wrongTaperFaults } from "../../bench/faults/kinds/unseen-values.ts";
import type { Build } from "../../build-file/schema.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import type { Rig } from "../model/rig-unknowns.ts";
import { addedBy } from "./added.ts";
import type { Departure } from "./departure.ts";
import { knownResistor, otherPositions } from "./told-departures.ts";
import { valueDepartures } from "./value-departures.ts";

/** Multiples of `JOINT_OHMS` to begin at. */
const JOINT_STARTS = [0.05, 0.4, 3, 30];
/** A joint of less is good, and one of more is open, which is a departure of its own. */
const POOR_JOINT_OHMS = { least: 15, most: 400e3 };

function ofFault(build: Build, fault: Fault): Departure {
  const added = fault.edits.some(({ edit }) => edit === "coil-open") ? addedBy(build, fault.edits) : [];
  return { edits: fault.edits, freed: [], added, starts: [added.map(() => 0)], faults: () => [fault] };
}

function poorJoints(build: Build): Departure[] {
  return resistivePlaces(guardWiringOf(build)).map(({ edit, faults, unseen }): Departure => {
    const edits = [edit(JOINT_OHMS)];
    return {
      edits,
      freed: [],
      added: addedBy(build, edits),
      starts: JOINT_STARTS.map((factor) => [Math.log(factor)]),
      faults: ([factor]) => {
        const ohms = factor! * JOINT_OHMS;
        return ohms < POOR_JOINT_OHMS.least || ohms > POOR_JOINT_OHMS.most ? [] : faults(ohms);
      },
      slight: unseen,
    };
  });
}

/** Every way in which this guard may depart from its drawing that takes can show; what is only felt is not among them. */
function ofGuard(build: Build, checkpoint: Checkpoint): Departure[] {
  const guard = guardWiringOf(build);
  const listed = [...singleFaults(build, checkpoint), ...wrongCapFaults(guard), ...wrongTaperFaults(guard)];
  return [
    ...listed
      .filter(({ edits }) => edits.length > 0)
      .map((fault) => {
        checkpoint.checkpoint();
        return ofFault(build, fault);
      }),
    ...poorJoints(build),
    ...valueDepartures(build),
  ];
}

/**
 * Every departure that is weighed: the guard's, and what was told of the takes.
 * @param rig by which takes at the jack are made; left out where there are none
 */
export function departuresOf(build: Build, checkpoint: Checkpoint = NO_CHECKPOINT, rig?: Rig): Departure[] {
  return [...ofGuard(build, checkpoint), ...otherPositions(build), ...(rig ? [knownResistor(rig)] : [])];
}
