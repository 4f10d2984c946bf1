import type { MeasureRequest } from "../../contract/measure/measure.ts";
import { formText } from "../fields/form-fields.ts";
import { createChannelOrder } from "./channel-order.ts";
import { loadOf } from "./load-of.ts";
import { fractionAs } from "./percent.ts";
import { resistorPicture } from "./rig-picture.ts";
import type { Way } from "./way.ts";

export type Part = Extract<MeasureRequest, { method: "series-resistor" }>["part"];

interface PartWords {
  readonly called: string;
  /** The known resistor that suits it, and when another does. */
  readonly resistor: string;
  readonly advice: string;
  readonly budget: string;
}

/** Each resistor lies near what the part itself shows where it is read, so that neither channel is left with hiss. */
const PARTS: Readonly<Record<Part, PartWords>> = {
  coil: {
    called: "coil",
    resistor: "10k",
    advice: "10 kΩ for resistance and inductance; 470 kΩ where the peak and the coil's capacitance are wanted",
    budget: "The coil's capacitance comes out with the input's and the lead's on top unless they are taken out.",
  },
  capacitor: {
    called: "cap",
    resistor: "4.7k",
    advice: "4.7 kΩ for a tone cap; 100 kΩ below a nanofarad",
    budget: "Beside 22 nF the input's picofarads are half a per cent.",
  },
  resistor: {
    called: "resistor or track",
    resistor: "100k",
    advice: "one near the value that is measured; a pot is measured between its outer lugs",
    budget: "Beside 500 kΩ an input of 1 MΩ takes a third.",
  },
  lead: {
    called: "lead",
    resistor: "470k",
    advice: "470 kΩ, since a few hundred picofarads show much there",
    budget:
      "The input's own picofarads are a good part of a lead's: the recording without the part is what takes them out.",
  },
};

const needs = ({ called, advice }: PartWords) => [
  "An audio interface with two inputs of one kind, both switched to instrument (1 MΩ), their gains alike.",
  `A known resistor: ${advice}; of 1 %, or measured with a meter.`,
  `Clips, a lead to each input, and one from a line output. The ${called} has nothing else across it.`,
];

const steps = ({ called }: PartWords) => [
  `Take the ${called} out of the circuit, or unsolder one end of it.`,
  "Clip the resistor between the output's tip and the part; the part's other end goes to the sleeves, which all meet.",
  "One input goes before the resistor, where the output is; the other behind it, where the part is. The picture shows which, as chosen below.",
  "Record it. Set levels on this one: the loudest pass should peak between −12 and −3 dB on the input before the resistor. Then touch no gain.",
  "Best: record both inputs on one point, before the resistor. That takes the difference of their gains out.",
  "Best: record with the part taken off. That takes the inputs' own 1 MΩ and picofarads out. Second best: type in below the 1 MΩ and picofarads that the manual says, with those of the lead; a recording goes before them.",
  "For small values: record with the two clips of the part on each other. That takes the clips' own resistance out.",
];

const budgetOf = ({ budget }: PartWords) =>
  `The resistor's tolerance goes straight into every value; so does what the two gains differ by, some 3 %, unless both inputs are recorded on one point. ${budget} An input has some 1 MΩ and 100 pF across the part; the recording` +
  " without the part removes them. Hiss and hum are in the standard errors that the answer carries.";

/** A part behind a known resistor, the voltage recorded on both sides. */
export function resistorWay(part: Part): Way {
  const words = PARTS[part];
  const resistor = formText("resistor", "The known resistor", words.resistor);
  const tolerance = formText("resistorTolerance", "Its tolerance in %", "1");
  const { field: channels, picture } = createChannelOrder("channels", (inputs) =>
    resistorPicture(words.called, inputs),
  );
  const input = formText("input.resistance", "The input's resistance, if known", "", "1M");
  const inputCap = formText("input.capacitance", "Its capacitance with the lead's", "", "150p");
  const resistance = formText("resistance", "DC resistance by meter", "", "6.2k");
  const isCoil = part === "coil";
  return {
    picture,
    needs: needs(words),
    steps: steps(words),
    budget: budgetOf(words),
    recordings: [
      { name: "measured", isStereo: true, label: `The ${words.called}` },
      { name: "gain", isStereo: true, label: "Both inputs on one point", isOptional: true },
      { name: "open", isStereo: true, label: "Without the part", isOptional: true },
      { name: "short", isStereo: true, label: "The clips on each other", isOptional: true },
    ],
    fields: [resistor, tolerance, channels, input, inputCap, ...(isCoil ? [resistance] : [])],
    body: (signal, given) => {
      const stated = loadOf(input.read(), inputCap.read());
      // The service takes one of the two.
      const isStated = Object.keys(stated).length > 0 && !given.has("open");
      return {
        method: "series-resistor",
        signal,
        part,
        resistor: resistor.read(),
        ...fractionAs("resistorTolerance", tolerance.read()),
        channels: channels.read(),
        ...(isStated ? { input: stated } : {}),
        ...(isCoil && resistance.read() ? { resistance: resistance.read() } : {}),
      };
    },
  };
}
