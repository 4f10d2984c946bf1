import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { type MountingStep, stepFor } from "./mounting-step.ts";

/** How the jack sits. Common practice, no source. */
export function jackSteps(build: Build): MountingStep[] {
  return stepFor(
    partsOfKind(build, "jack").map(([name]) => name),
    "Jack",
    "Toothed washer inside, flat washer and nut outside. Turn it so that its lugs, and its tip spring with a plug in, stay clear of walls and foil; hold it while you tighten, or it turns and twists its wires off.",
  );
}
