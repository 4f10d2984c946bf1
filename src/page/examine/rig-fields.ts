import type { ExamineRequest } from "../../contract/examine/examine-request.ts";
import { formText } from "../fields/form-fields.ts";
import { createChannelOrder } from "../sound-card/channel-order.ts";
import { fractionAs } from "../sound-card/percent.ts";
import { jackPicture } from "../sound-card/rig-picture.ts";

/** How the interface hangs on the guard. */
export function rigFields() {
  const resistor = formText("rig.resistor", "The known resistor", "47k");
  const tolerance = formText("rig.tolerance", "Its tolerance in %", "1");
  const { field: channels, picture } = createChannelOrder("rig.channels", jackPicture);
  const input = formText("rig.input.resistance", "The input at the jack, if known", "", "1M");
  const inputCap = formText("rig.input.capacitance", "Its capacitance with the lead's", "", "160p");
  return {
    picture,
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

export type RigFields = ReturnType<typeof rigFields>;
