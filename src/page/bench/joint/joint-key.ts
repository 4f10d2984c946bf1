import type { Schedule, SheetJoint, SheetStage } from "../../drawing/joint/schedule.ts";

/**
 * What makes a joint the same one in another sheet: its place and what meets there, whatever its number is and those of its wires.
 * It is what ticks are kept by.
 */
export function jointKey(schedule: Schedule, { kind, at, ends }: SheetJoint): string {
  const names = ends.map((end) => {
    const { means, stops } = schedule.pieceOf(end);
    return end.lead ?? `${means} ${stops.join(" > ")}`;
  });
  return `${kind} ${at}: ${names.sort().join(", ")}`;
}

/** The same of a stage's check: those of several stages read alike. */
export function checkKey(schedule: Schedule, { joints }: SheetStage, text: string): string {
  return `${text} (${joints.map((joint) => jointKey(schedule, joint)).join("; ")})`;
}
