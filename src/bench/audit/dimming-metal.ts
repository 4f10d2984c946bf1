import { inDecibels } from "../../choice/compare/verdict.ts";
import { decibels } from "../../decibels.ts";
import { emfLaw } from "../../response/emf-law.ts";
import type { AuditContext } from "./context.ts";
import { type Finding, finding } from "./finding.ts";
import { leadsOf } from "./reach.ts";

/** Where a pickup's treble is told by, and an octave below. */
const TREBLE_HZ = Float64Array.of(2000, 4000);
/** What is plainly heard (as `src/choice/compare/verdict.ts` has it). */
const PLAIN_DB = 3;

/** Pickups whose own metal takes so much of the EMF's treble that nothing behind their leads gives it back. */
export function dimmingMetal(context: AuditContext): Finding[] {
  return context.partsOf("pickup").flatMap(([name, { coils }]) => {
    const losses = Object.values(coils).flatMap(({ shielding }) => {
      if (!shielding) return [];
      const { re, im } = emfLaw(shielding)(TREBLE_HZ);
      return [Array.from(re, (value, i) => -decibels(Math.hypot(value, im[i]!)))];
    });
    const most = losses.reduce((worst, loss) => (loss[1]! > worst[1]! ? loss : worst), [0, 0]);
    if (most[1]! <= PLAIN_DB) return [];
    return finding({
      code: "metal-dims",
      lugs: leadsOf(context, name),
      message: `The metal about ${name} takes ${inDecibels(most[1]!)} of its treble at 4 kHz and ${inDecibels(most[0]!)} at 2 kHz, before any of the wiring: no tone control, cap or lighter load gives that back.`,
      remedy: "Leave it if its warmth is wanted; else it takes a cover of low loss, none, or another pickup.",
    });
  });
}
