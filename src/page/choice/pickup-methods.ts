import type { FitRequest } from "../../contract/fit.ts";
import { type FormField, formArea, formChoice, formText } from "../fields/form-fields.ts";
import type { Option } from "../fields/plain-fields.ts";

export const METHODS = [
  { value: "resonances", label: "resonances with known caps across it" },
  { value: "impedance", label: "an impedance table" },
  { value: "two-loads", label: "its voltage without and with a load" },
  { value: "response", label: "a response through a known load" },
  { value: "resistance", label: "only its DC resistance" },
] satisfies Option<FitRequest["method"]>[];

const WITHIN = [
  { value: "", label: "not known: the ranges hold all" },
  { value: "rods", label: "alnico rods, no steel" },
  { value: "steel-single", label: "a single coil on steel cores, or with a base plate" },
  { value: "wide-single", label: "a wide single coil, screws over bar magnets" },
  { value: "humbucker", label: "a humbucker, screws and slugs, without a cover or under one of nickel silver" },
  { value: "covered", label: "a coil under a lossy cover or in a can" },
] satisfies Option<CoilType | "">[];

type Resonances = Extract<FitRequest, { method: "resonances" }>;
type CoilType = NonNullable<Resonances["type"]>;
type PairLine = Resonances["readings"][number];

const TWO_LOADS =
  "Lay a small coil on the pickup, drive it with a slow sweep and record what the pickup gives: once as it is, once with a resistor" +
  " and a cap across its leads, and best a third time with 10 nF alone. Touch neither the gain nor the coil in between. Each table is" +
  " the first record over a loaded one. The driving coil's own slope, and what metal takes of the pickup's treble, cancel.";

/** Lines of "cap, frequency", a resonance each. */
function resonanceLines(text: string): PairLine[] {
  return text
    .split("\n")
    .map((line) => line.trim())
    .filter(Boolean)
    .map((line) => {
      const [capacitance = "", frequency = ""] = line.split(/[,;\t]\s*|\s{2,}|\s(?=\d)/);
      return { capacitance: capacitance === "0" ? "0p" : capacitance, frequency };
    });
}

export interface Method {
  /** How to measure, where the fields do not say it. */
  readonly hint?: string;
  readonly fields: readonly FormField[];
  body(): FitRequest;
}

/** What is known of the coil beside the table. */
interface Known {
  readonly field: FormField;
  told(): { readonly resistance?: string };
}

function twoLoads(known: Known): Method {
  const ratio = formArea("table", "Hz, dB, degrees: without the load over with it", "100, 0.49, 0.4\n200, 0.48, 1.2");
  const load = formText("load.resistance", "Load resistance", "200k");
  const loadCap = formText("load.capacitance", "Load capacitance", "470p");
  const second = formArea(
    "second.table",
    "The same under a second load (may be left out)",
    "100, -0.28, 2.0\n200, -0.4, 4.1",
  );
  const secondCap = formText("second.load.capacitance", "Second load, a cap alone", "10n");
  const input = formText("across.resistance", "Input it is measured with", "1M");
  return {
    hint: TWO_LOADS,
    fields: [known.field, ratio, load, loadCap, second, secondCap, input],
    body: () => ({
      method: "two-loads",
      ...known.told(),
      table: ratio.read(),
      load: { ...(load.read() ? { resistance: load.read() } : {}), capacitance: loadCap.read() || 0 },
      ...(second.read() ? { second: { table: second.read(), load: { capacitance: secondCap.read() } } } : {}),
      ...(input.read() ? { across: { resistance: input.read() } } : {}),
    }),
  };
}

export function methods(): Readonly<Record<FitRequest["method"], Method>> {
  const resistance = formText("resistance", "DC resistance", "6k");
  const lines = formArea("readings", "Cap across it, resonance", "0, 6.1kHz\n470p, 3.2kHz\n1n, 2.4kHz");
  const within = formChoice<CoilType | "">("type", "What stands in it", WITHIN);
  const type = formChoice("type", "Kind", [
    { value: "single", label: "single coil" },
    { value: "wide-single", label: "wide single coil" },
    { value: "humbucker", label: "humbucker" },
  ]);
  const impedance = formArea("table", "Hz, ohms, degrees (degrees may be left out)", "100, 6050, 14\n200, 6300, 26");
  const response = formArea("table", "Hz, dB", "100, 0.0\n200, 0.1");
  const load = formText("load.resistance", "Load resistance", "1M");
  const loadCap = formText("load.capacitance", "Load capacitance", "470p");
  const known = () => (resistance.read() ? { resistance: resistance.read() } : {});
  return {
    resonances: {
      fields: [resistance, within, lines],
      body: () => {
        const type = within.read();
        const readings = resonanceLines(lines.read());
        return { method: "resonances", resistance: resistance.read(), readings, ...(type ? { type } : {}) };
      },
    },
    impedance: {
      fields: [resistance, impedance],
      body: () => ({ method: "impedance", ...known(), table: impedance.read() }),
    },
    "two-loads": twoLoads({ field: resistance, told: known }),
    response: {
      fields: [resistance, response, load, loadCap],
      body: () => ({
        method: "response",
        ...known(),
        table: response.read(),
        load: { resistance: load.read(), capacitance: loadCap.read() || 0 },
      }),
    },
    resistance: {
      fields: [resistance, type],
      body: () => ({ method: "resistance", resistance: resistance.read(), type: type.read() }),
    },
  };
}
