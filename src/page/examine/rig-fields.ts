import type { ExamineRequest } from "../../contract/examine/examine-request.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
import { fractionAs } from "../sound-card/percent.ts";

const ORDERS = [
  { value: "before-behind", label: "input 1 before the resistor, 2 at the jack" },
  { value: "behind-before", label: "input 2 before the resistor, 1 at the jack" },
] as const;

/** How the interface hangs on the guard. */
export function rigFields() {
  const resistor = formText("rig.resistor", "The known resistor", "47k");
  const tolerance = formText("rig.tolerance", "Its tolerance in %", "1");
  const channels = formChoice("rig.channels", "Inputs", ORDERS);
  const input = formText("rig.input.resistance", "The jack's input, if known", "", "1M");
  const inputCap = formText("rig.input.capacitance", "Its capacitance with the lead's", "", "160p");
  return {
    fields: [resistor, tolerance, channels, input, inputCap],
    read: (): NonNullable<ExamineRequest["rig"]> => ({
      resistor: resistor.read(),
      ...fractionAs("tolerance", tolerance.read()),
      channels: channels.read(),
      ...(input.read() || inputCap.read()
        ? {
            input: {
              ...(input.read() ? { resistance: input.read() } : {}),
              ...(inputCap.read() ? { capacitance: inputCap.read() } : {}),
            },
          }
        : {}),
    }),
  };
}
