import type { ExamineBody } from "../../../contract/examine/examine-request.ts";
import { type Rig, USUAL_INPUT } from "../../../examine/model/rig-unknowns.ts";

/** What is not said of an interface's input is its usual value, and not known. */
export function rigOf({ resistor, tolerance, input }: NonNullable<ExamineBody["rig"]>, isGainKnown: boolean): Rig {
  return {
    resistorOhms: resistor,
    tolerance,
    inputOhms: input?.resistance ?? USUAL_INPUT.ohms,
    inputFarads: input?.capacitance ?? USUAL_INPUT.farads,
    known: { ohms: input?.resistance !== undefined, farads: input?.capacitance !== undefined },
    isGainKnown,
  };
}
