import { formChoice, formText } from "../fields/form-fields.ts";
import { loadOf } from "./load-of.ts";
import { fractionAs } from "./percent.ts";
import { loadsPicture } from "./rig-picture.ts";
import type { Way } from "./way.ts";

/** Turns, loads and levels are common practice, no source. */
const NEEDS = [
  "An audio interface with an instrument input (1 MΩ; its manual says), and a lead into it with two clips.",
  "A small exciter coil: some 100 turns of thin enamelled wire on a bobbin as wide as the pickup, with 100 Ω in series, on a line or headphone output.",
  "A load to clip across the pickup: a resistor and a cap, say 200 kΩ and 470 pF, of 1 % or measured.",
  "A meter for the pickup's DC resistance, and best a cap of 10 nF as a second load.",
];

const STEPS = [
  "Take the pickup out of the circuit, or unsolder its hot lead: a pot or cable across it would count as the pickup.",
  "Lay the exciter coil on the pickup and hold it there with tape. It must not move until the last recording.",
  "Plug the output to the exciter, the pickup to the instrument input. Read the DC resistance with the meter first, then take the meter off.",
  "Record the pickup alone. Set levels now: the loudest pass should peak between −12 and −3 dB.",
  "Clip the load across the pickup's leads, touch neither the gain nor the output, and record again.",
  "Best: take the load off, clip the 10 nF cap across instead, and record a third time.",
];

const BUDGET =
  "The loads' tolerance is in the ranges: 1 % of a load alone is up to 1 % of L, and two loads tell of each other. The input's own 1 MΩ hardly matters where it is" +
  " said; its hundred picofarads or so, and the lead's, pass for the pickup's own where they are not. Hiss and hum widen the ranges that" +
  " stand beside the answer, which carries standard errors; what the exciter does to the treble cancels.";

const REFERENCES = [
  { value: "", label: "the pickup alone" },
  { value: "first", label: "input 1: output, 2: pickup" },
  { value: "second", label: "input 1: pickup, 2: output" },
] as const;

/** A pickup, by its voltage without and with loads. */
export function pickupWay(): Way {
  const load = formText("load.resistance", "Load resistor", "200k");
  const loadCap = formText("load.capacitance", "Load cap", "470p");
  const secondCap = formText("second.capacitance", "Second load, a cap alone", "10n");
  const tolerance = formText("load.tolerance", "The loads' tolerance in %", "1");
  const input = formText("across.resistance", "The input's resistance", "1M");
  const inputCap = formText("across.capacitance", "Its capacitance with the lead's", "150p");
  const resistance = formText("resistance", "DC resistance by meter", "", "6.2k");
  const reference = formChoice("reference", "What the recordings hold", REFERENCES);
  return {
    picture: loadsPicture(),
    needs: NEEDS,
    steps: STEPS,
    budget: BUDGET,
    recordings: [
      { name: "unloaded", label: "The pickup alone" },
      { name: "loaded", label: "With the load" },
      { name: "second", label: "With the second load", isOptional: true },
    ],
    fields: [load, loadCap, secondCap, tolerance, input, inputCap, resistance, reference],
    body: (signal, given) => {
      const side = reference.read();
      const within = fractionAs("tolerance", tolerance.read());
      return {
        method: "two-loads",
        signal,
        load: { ...loadOf(load.read(), loadCap.read()), ...within },
        ...(given.has("second") ? { second: { ...loadOf("", secondCap.read()), ...within } } : {}),
        across: loadOf(input.read(), inputCap.read()),
        ...(side ? { reference: side } : {}),
        ...(resistance.read() ? { resistance: resistance.read() } : {}),
      };
    },
  };
}
