import type { Build } from "../../build-file/schema.ts";
import { REFERENCE_CELSIUS } from "../meter/copper.ts";
import type { Reading } from "../meter/reading-taker.ts";
import { closingSteps } from "./closing.ts";
import { jackSteps } from "./jack.ts";
import type { MountingStep } from "./mounting-step.ts";
import { orderSteps } from "./order.ts";
import { pickupSteps } from "./pickups.ts";
import { potSteps } from "./pots.ts";
import { switchSteps } from "./switches.ts";

export interface Mounting {
  /** Before the first wire. */
  readonly before: readonly MountingStep[];
  /** After the last joint. */
  readonly closing: readonly MountingStep[];
}

/**
 * How the build's parts are fitted and how the guard is closed; nothing is said that no part calls for.
 * @param readings the meter table, of which the first lines are noted once the guard is closed
 * @param celsius temperature of the coils that they are for
 */
export function mountingOf(build: Build, readings: readonly Reading[], celsius = REFERENCE_CELSIUS): Mounting {
  return {
    before: [
      ...orderSteps(build),
      ...potSteps(build),
      ...switchSteps(build),
      ...jackSteps(build),
      ...pickupSteps(build),
    ],
    closing: closingSteps(build, readings, celsius),
  };
}
