import { PresolderError } from "../../errors.ts";
import type { CoilValues } from "../../response/coil-ladder.ts";
import { type Fit, fitCoil } from "./fit-problem.ts";

/** A resonance found with a known capacitor across the coil; 0 farads for none. */
export interface ResonanceReading {
  readonly capacitanceFarads: number;
  readonly frequencyHz: number;
}

export interface ResonanceSetup {
  readonly resistance: { readonly ohms: number; readonly precision: number };
  /** Where the peak was seen: in the impedance, or in the voltage at the leads when something else drives the coil. */
  readonly peakOf: "impedance" | "response";
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

/**
 * The frequency of the maximum of |Z| or of |V| of a coil without core loss: with A = 1 + R·G, B = R·C + L·G and x = ω²,
 * |V|⁻² = (A − LCx)² + B²x and |Z|² = (R² + L²x)·|V|², whose derivatives vanish at the roots below.
 */
export function resonanceHz(
  coil: CoilValues,
  extraFarads: number,
  setup: Pick<ResonanceSetup, "peakOf" | "across">,
): number {
  const { resistance: r, inductance: l } = coil;
  const c = coil.capacitance + extraFarads + setup.across.capacitance;
  const g = Number.isFinite(setup.across.resistance) ? 1 / setup.across.resistance : 0;
  const a = 1 + r * g;
  const b = r * c + l * g;
  const x =
    setup.peakOf === "response"
      ? a / (l * c) - b ** 2 / (2 * l ** 2 * c ** 2)
      : (Math.sqrt((r * c) ** 4 / l ** 4 + (c / l) ** 2 * (a ** 2 + (r / l) ** 2 * (2 * l * c * a - b ** 2))) -
          (r * c) ** 2 / l ** 2) /
        c ** 2;
  return Math.sqrt(Math.max(x, Number.MIN_VALUE)) / (2 * Math.PI);
}

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
const AT_RESONANCE =
  "A resonance shows the inductance at its own frequency. On alnico rods that is the inductance; a coil with steel in it has a" +
  " tenth to a half more at low frequencies, which an impedance table or a voltage with and without a load would show.";

/**
 * Fits inductance and winding capacitance to resonances with two or more known capacitors across the coil; the DC resistance
 * is given. Frequencies without a stated precision count as good to 1 % where there are fewer than five.
 * @throws PresolderError DATA_INSUFFICIENT
 */
export function fitResonances(readings: readonly ResonanceReading[], setup: ResonanceSetup): Fit {
  const distinct = new Set(readings.map(({ capacitanceFarads }) => capacitanceFarads));
  if (distinct.size < 2) {
    const message = `The resonances are of ${distinct.size} capacitor; expected at least 2 different ones (none counts as one)`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
  const assumed = readings.length < READINGS_THAT_SHOW_SCATTER ? ASSUMED_FREQUENCY_PRECISION : undefined;
  const fit = fitCoil({
    guess: guessFrom(readings, setup),
    errors: (coil) =>
      Float64Array.from(readings, ({ capacitanceFarads, frequencyHz }) =>
        Math.log(frequencyHz / resonanceHz(coil, capacitanceFarads, setup)),
      ),
    precision: setup.precision ?? assumed,
    resistance: setup.resistance,
    free: [],
    runs: [],
    models: ["none"],
    checkpoint: setup.checkpoint,
    remedy:
      "Use capacitors farther apart, with one reading without any: from none to about ten times the winding's own.",
  });
  return { ...fit, notes: [...fit.notes, AT_RESONANCE] };
}
