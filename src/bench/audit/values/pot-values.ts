import { trackLugs } from "../../../build-file/lug-names.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import type { AuditContext } from "../context.ts";
import { type Finding, finding } from "../finding.ts";
import { likelyValue } from "./usual-value.ts";

/** Tracks that passive guards have, and as much beyond them as anybody wires on purpose (common practice, no source). */
const USUAL = { minOhms: 250e3, maxOhms: 1e6 };
const MEANT = { minOhms: 10e3, maxOhms: 3e6 };

const shown = (ohms: number) => showQuantity(ohms, "resistance", 3);

/** Pots whose track looks like a slip: 500 for 500 kΩ. */
export function unusualPots(context: AuditContext): Finding[] {
  return context.partsOf("pot").flatMap(([name, { resistance }]) => {
    if (resistance >= MEANT.minOhms && resistance <= MEANT.maxOhms) return [];
    const likely = likelyValue(resistance, USUAL.minOhms, USUAL.maxOhms);
    return finding({
      code: "pot-value-unusual",
      lugs: trackLugs(name),
      message: `${name} is ${shown(resistance)}; a guitar's pot is usually ${shown(USUAL.minOhms)} to ${shown(USUAL.maxOhms)}. Is ${shown(likely)} meant?`,
      remedy: "Write the unit: 500k is 500 kΩ, 500 alone is 500 Ω; 504 on a pot is 500 kΩ.",
    });
  });
}
