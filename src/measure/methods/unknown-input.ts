import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Across } from "../../choice/fit/coil-model.ts";
import type { Point } from "./behind-resistor.ts";
import { faradsOf, kindOf, type MeasuredPart } from "./part-kind.ts";
import { CAPACITOR_FROM_HZ, resistorOf, type Value } from "./part-values.ts";

/**
 * What an input that nobody measured may add at most: a megohm, as instrument inputs have it, and its own capacitance with a lead's.
 * A judgement, no source.
 */
const INPUT_SIEMENS = 1e-6;
const INPUT_FARADS = 400e-12;

/** A value and the range of 95 % about it, as fits and parts have it. */
interface Ranged {
  readonly name: string;
  readonly value: number;
  readonly relativeError: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

/** A loss hardly to be seen beside it, for a range that an input may account for all of: ohms. */
const NO_LOSS_OHMS = 1e9;
const LEAST_FARADS = 1e-12;

/** The standard deviation of a shift that lies anywhere from 0 to this. */
const evenly = (most: number) => most / Math.sqrt(12);

/** With the error that a shift of so much, or none of it, adds. */
function widened<Told extends Ranged>(told: Told, low: number, high: number, shift: number): Told {
  const standardError = Math.hypot(told.standardError, evenly(shift));
  return { ...told, low, high, standardError, relativeError: standardError / told.value };
}

const isAcross = ({ name }: Ranged, all: readonly Ranged[]) =>
  name === "loss" ||
  (/^loss\.\d\.resistance$/.test(name) && !all.some((each) => each.name === name.replace("resistance", "inductance")));

/** A coil's values where its input's are in them: the capacitance may be less, and what bridges the coil more. */
export function coilBehindUnknown<Told extends Ranged>(values: readonly Told[]): Told[] {
  return values.map((told) => {
    if (told.name === "capacitance") {
      const least = Math.max(LEAST_FARADS, told.low - INPUT_FARADS);
      return widened(told, Math.min(told.low, least), told.high, Math.min(INPUT_FARADS, told.value));
    }
    if (!isAcross(told, values)) return told;
    const without = (ohms: number) => 1 / Math.max(1 / NO_LOSS_OHMS, 1 / ohms - INPUT_SIEMENS);
    return widened(told, told.low, without(told.high), without(told.value) - told.value);
  });
}

/** A coil's values where a conductance across it may be as much more or less than was taken out, siemens. */
export function coilWithin<Told extends Ranged>(values: readonly Told[], siemens: number): Told[] {
  return values.map((told) => {
    if (!isAcross(told, values)) return told;
    const beside = (ohms: number, more: number) => 1 / Math.max(1 / NO_LOSS_OHMS, 1 / ohms + more);
    const standardError = Math.hypot(told.standardError, told.value ** 2 * siemens);
    const range = { low: beside(told.low, siemens), high: beside(told.high, -siemens) };
    return { ...told, ...range, standardError, relativeError: standardError / told.value };
  });
}

export const capacitanceBehindUnknown = ({ value, standardError }: Value): Value => ({
  value,
  standardError: Math.hypot(standardError, INPUT_FARADS),
});

/** tan δ = G/B with the conductance that nobody took out in G, most at the lowest frequency that counts. */
export const lossBehindUnknown = ({ value, standardError }: Value, farads: number, siemens = INPUT_SIEMENS): Value => ({
  value,
  standardError: Math.hypot(standardError, siemens / (2 * Math.PI * CAPACITOR_FROM_HZ * farads)),
});

export const resistanceBehindUnknown = ({ value, standardError }: Value, siemens = INPUT_SIEMENS): Value => ({
  value,
  standardError: Math.hypot(standardError, value * value * siemens),
});

const UNKNOWN_INPUT_NOTE =
  "The input's own resistance and capacitance, some 1 MΩ and with its lead 50 to 400 pF, are in the values told, and their errors are widened" +
  " for it. A recording without the part takes them out; so do the input's values, where they are known.";

/** A resistor that may as well be a lead: the input's own megohm across a lead is what a large resistor is across the input's capacitance. */
function mixedNotes(part: MeasuredPart, points: readonly Point[]): string[] {
  const { resistance } = resistorOf(points);
  const farads = faradsOf(points);
  if (part !== "resistor" || kindOf(points) !== undefined || !resistance || farads === undefined) return [];
  const [ohms, across] = [showQuantity(resistance.value, "resistance", 2), showQuantity(farads, "capacitance", 2)];
  return [
    `What was measured is some ${ohms} with some ${across} across it: a large resistor on an input with a long lead looks like this, and so does` +
      " a lead alone on an input of about a megohm. A recording `open`, with nothing clipped on, tells which: what it does not show is the part's.",
  ];
}

/** What to bear in mind where no recording and nobody told the input. */
export const unknownInputNotes = (part: MeasuredPart, points: readonly Point[]): string[] => [
  ...mixedNotes(part, points),
  UNKNOWN_INPUT_NOTE,
];

export const STATED_INPUT_NOTE =
  "The input's own resistance and capacitance were taken out as stated, without an error; a recording without the part would measure them.";

const ACROSS_NOTE =
  "Nobody said what the instrument's input and lead have across the pickup (`across`), some 1 MΩ and 50 to 400 pF: it is in the coil's capacitance" +
  " and loss, and their errors are widened for it.";
const STATED_ACROSS_NOTE =
  "The instrument's input and lead across the pickup were taken out as stated, without an error: 10 pF more of it are 10 pF less of the coil.";

/** A coil heard under loads, with the instrument's own input across it all the while, as stated or not. */
export function underInput<
  Told extends Ranged,
  Found extends { readonly values: readonly Told[]; readonly notes: readonly string[] },
>(fit: Found, isStated: boolean): Found {
  if (isStated) return { ...fit, notes: [...fit.notes, STATED_ACROSS_NOTE] };
  return { ...fit, values: coilBehindUnknown(fit.values), notes: [...fit.notes, ACROSS_NOTE] };
}

/** What an input is by its stated values at one frequency. */
export function inputImpedance({ resistance, capacitance }: Across, hz: number) {
  const [g, b] = [Number.isFinite(resistance) ? 1 / resistance : 0, 2 * Math.PI * hz * capacitance];
  const norm = g * g + b * b;
  return { re: g / norm, im: -b / norm, sd: 0 };
}
