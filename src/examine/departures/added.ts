import type { Edit } from "../../bench/faults/edits/edit.ts";
import { editBuild } from "../../bench/faults/edits/edit-build.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Unknown } from "../model/unknowns.ts";

/** The ln of what a poor joint has scatters this far: from tens of ohms to a hundred kilohms. */
const JOINT_DEVIATION = 2.3;
/** What is left across a break in a coil differs by that factor. */
const BREAK_DEVIATION = 1;

/** What of the parts that edits bring in nobody knows, in the order of the edits. */
export function addedBy(build: Build, edits: readonly Edit[]): Unknown[] {
  return Object.entries(editBuild(build, edits).parts).flatMap(([part, { kind }]): Unknown[] => {
    if (part in build.parts) return [];
    if (kind === "resistor")
      return [{ part, field: "resistance", law: "log", deviation: JOINT_DEVIATION, tolerance: 0 }];
    if (kind === "cap") return [{ part, field: "capacitance", law: "log", deviation: BREAK_DEVIATION, tolerance: 0 }];
    return [];
  });
}
