import { PresolderError } from "../../errors.ts";
import type { LossModel } from "./coil-shapes.ts";
import type { FitProblem } from "./fit-attempt.ts";
import { type Fit, fitCoil } from "./fit-problem.ts";
import type { FittedValue } from "./fitted-value.ts";
import { type PeakOf, peakHz } from "./resonance-peak.ts";
import { type CoilType, type UsualCoil, usualCoil } from "./usual-coils.ts";

/** A resonance found with a known capacitor across the coil; 0 farads for none. */
export interface ResonanceReading {
  readonly capacitanceFarads: number;
  readonly frequencyHz: number;
}

export interface ResonanceSetup {
  readonly resistance: { readonly ohms: number; readonly precision: number };
  readonly peakOf: PeakOf;
  /** What stands in the coil, where the person says it. */
  readonly type?: CoilType | undefined;
  /** What else hangs across the coil all the while: leads, a meter. */
  readonly across: { readonly resistance: number; readonly capacitance: number };
  /** Relative standard deviation of each frequency, where known. */
  readonly precision: number | undefined;
  /** Called between evaluations; may throw to give the work up. */
  readonly checkpoint?: (() => void) | undefined;
}

/** How well a peak is found by ear or eye where nobody says, and too few readings show it; common practice, no source. */
export const ASSUMED_FREQUENCY_PRECISION = 0.01;
/** From this many readings on, their own scatter says how good they are. */
const READINGS_THAT_SHOW_SCATTER = 5;

function guessFrom(readings: readonly ResonanceReading[], setup: ResonanceSetup) {
  // 1/ω² = L·(C + C_extra): a line through the readings of the least and the largest capacitor.
  const sorted = readings.toSorted((p, q) => p.capacitanceFarads - q.capacitanceFarads);
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  const period = ({ frequencyHz }: ResonanceReading) => 1 / (2 * Math.PI * frequencyHz) ** 2;
  const slope = (period(last) - period(first)) / (last.capacitanceFarads - first.capacitanceFarads);
  const inductance = slope > 0 ? slope : 3;
  const own = period(first) / inductance - first.capacitanceFarads - setup.across.capacitance;
  return { resistance: setup.resistance.ohms, inductance, capacitance: Math.max(own, 20e-12), loss: 1e6 };
}

/**
 * Of fifteen coils those on steel lost 9–33 % of their inductance from 120 Hz to 5 kHz, one in a closed can 41 %, those on alnico rods
 * none (open data set strayr/pickupAnalyseR-data, CC0-1.0, reduced).
 */
const UNTYPED =
  "A resonance shows the inductance at its own frequency. On alnico rods that is the inductance; a coil with steel in it has a" +
  " tenth to a half more at low frequencies and a lower peak, so that the ranges hold both. Say what kind of pickup it is, or measure an" +
  " impedance table or its voltage with and without a load.";
const TYPED =
  "A resonance does not show what a coil loses in its steel or its cover: that is taken as such pickups have it as a rule, and the" +
  " ranges hold what they differ by.";

/** A coil of rods has a resistor across its inductance, one with steel in it a section besides. */
const lossOf = (type: CoilType): LossModel => (type === "rods" ? "resistor" : "section-and-resistor");

function problemOf(
  readings: readonly ResonanceReading[],
  setup: ResonanceSetup,
  type: CoilType | undefined,
  usual: UsualCoil,
): FitProblem {
  const assumed = readings.length < READINGS_THAT_SHOW_SCATTER ? ASSUMED_FREQUENCY_PRECISION : undefined;
  return {
    guess: guessFrom(readings, setup),
    errors: (coil) =>
      Float64Array.from(readings, ({ capacitanceFarads, frequencyHz }) => {
        const across = { ...setup.across, capacitance: setup.across.capacitance + capacitanceFarads };
        return Math.log(frequencyHz / peakHz(coil, across, setup.peakOf));
      }),
    precision: setup.precision ?? assumed,
    resistance: setup.resistance,
    free: [],
    runs: [],
    models: [type ? lossOf(type) : "none"],
    usual,
    isLossUsual: true,
    checkpoint: setup.checkpoint,
    remedy:
      "Use capacitors farther apart, with one reading without any: from none to about ten times the winding's own.",
  };
}

/** A range that holds both; the error with it, as a range of 95 % has it. */
function holding(value: FittedValue, other: FittedValue): FittedValue {
  const [low, high] = [Math.min(value.low, other.low), Math.max(value.high, other.high)];
  const reach = Math.max(Math.log(high / value.value), Math.log(value.value / low));
  const relativeError = Math.max(
    value.relativeError,
    (reach / Math.log(value.high / value.value)) * value.relativeError,
  );
  return { ...value, low, high, relativeError, standardError: value.value * relativeError };
}

/** Ranges that hold what the coil is without steel and with any that such coils have. */
function untyped(bare: Fit, steel: readonly Fit[]): Fit {
  const wider = (value: FittedValue, of: (fit: Fit) => FittedValue | undefined) =>
    steel.reduce((held, fit) => holding(held, of(fit) ?? held), value);
  return {
    ...bare,
    values: bare.values.map((value) => wider(value, ({ values }) => values.find(({ name }) => name === value.name))),
    lowFrequencyInductance: wider(bare.lowFrequencyInductance, (fit) => fit.lowFrequencyInductance),
  };
}

/**
 * Fits inductance and winding capacitance to resonances with two or more known capacitors across the coil; the DC resistance
 * is given. What the core takes is that of the type as a rule; without a type there is none, and the ranges hold what there may be.
 * Frequencies without a stated precision count as good to 1 % where there are fewer than five.
 * @param usualOf what a coil of each type is as a rule
 * @throws PresolderError DATA_INSUFFICIENT
 */
export function fitResonances(
  readings: readonly ResonanceReading[],
  setup: ResonanceSetup,
  usualOf: (type: CoilType | undefined) => UsualCoil = usualCoil,
): Fit {
  const distinct = new Set(readings.map(({ capacitanceFarads }) => capacitanceFarads));
  if (distinct.size < 2) {
    const message = `The resonances are of ${distinct.size} capacitor; expected at least 2 different ones (none counts as one)`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
  const fitAs = (type: CoilType | undefined) => fitCoil(problemOf(readings, setup, type, usualOf(type)));
  const { type } = setup;
  const fit = type ? fitAs(type) : untyped(fitAs(undefined), [fitAs("humbucker"), fitAs("covered")]);
  return { ...fit, notes: [...fit.notes, type ? TYPED : UNTYPED] };
}
