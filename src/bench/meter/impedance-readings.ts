import type { Build } from "../../build-file/schema.ts";
import { Controls, rawSettings, type SettingValue } from "../../build-file/settings.ts";
import type { Network } from "../../network/elements.ts";
import { solveTransfers } from "../../network/nodal-analysis.ts";
import { assemblePencil } from "../../network/pencil.ts";
import { type Circuit, CircuitMaker } from "../../response/circuit.ts";
import { mainPositions } from "../main-positions.ts";
import { affordableListenings } from "../solving-effort.ts";

/** What a meter for inductance and capacitance shows at the jack, nothing plugged in. */
export interface ImpedanceReading {
  readonly label: string;
  readonly settings: Readonly<Record<string, SettingValue>>;
  /** Hz. */
  readonly frequency: number;
  /** Resistance and reactance in series, ohms; null where no current flows. */
  readonly seriesOhms: number | null;
  readonly reactanceOhms: number | null;
  /** Series inductance where the reactance is inductive, else null. */
  readonly henries: number | null;
  /** Parallel capacitance where the reactance is capacitive, else null. */
  readonly farads: number | null;
}

/** The usual test frequencies of such meters; the lower one shows a pickup's inductance less disturbed by its capacitance. */
const TEST_FREQUENCIES_HZ = Float64Array.of(120, 1000);
/** In series with the test EMF: about a guard's own impedance, so that neither end of the divider loses digits. */
const SOURCE_OHMS = 1e5;
/** Beyond this nothing flows that a meter could measure. */
const OPEN_OHMS = 1e10;

interface Complex {
  readonly re: number;
  readonly im: number;
}

/**
 * The impedance from a node to node 0, at each frequency: an EMF behind SOURCE_OHMS gives v = Z / (Z + R), so Z = R v / (1 − v).
 * @returns null where no current flows
 */
export function impedanceAt({ network, outputNode }: Circuit, frequenciesHz: Float64Array): (Complex | null)[] {
  if (outputNode === 0) return Array.from(frequenciesHz, () => ({ re: 0, im: 0 }));
  const source = network.sourceCount;
  const driven: Network = {
    ...network,
    elements: [...network.elements, { kind: "branch", a: 0, b: outputNode, ohms: SOURCE_OHMS, henries: 0, source }],
    sourceCount: source + 1,
  };
  const { re, im } = solveTransfers(assemblePencil(driven), outputNode, frequenciesHz)[source]!;
  return Array.from(frequenciesHz, (_, i) => {
    const [vr, vi] = [re[i]!, im[i]!];
    const norm = (1 - vr) ** 2 + vi ** 2;
    if (norm * OPEN_OHMS ** 2 <= SOURCE_OHMS ** 2) return null;
    return { re: (SOURCE_OHMS * (vr * (1 - vr) - vi * vi)) / norm, im: (SOURCE_OHMS * vi) / norm };
  });
}

function reading(z: Complex | null, frequency: number) {
  const omega = 2 * Math.PI * frequency;
  if (z === null) return { seriesOhms: null, reactanceOhms: null, henries: null, farads: null };
  const { re, im } = z;
  return {
    seriesOhms: re,
    reactanceOhms: im,
    henries: im > 0 ? im / omega : null,
    farads: im < 0 ? -im / ((re * re + im * im) * omega) : null,
  };
}

/** Readings at the jack in every position of the main switch, dials at 10; of a huge build in as many as can be afforded. */
export function impedanceReadings(build: Build): ImpedanceReading[] {
  const controls = new Controls(build);
  const maker = new CircuitMaker(build);
  const states = mainPositions(controls).slice(0, affordableListenings(build));
  return states.flatMap(({ settings, label }) => {
    const impedances = impedanceAt(maker.circuitIn(settings, { withCableAndLoad: false }), TEST_FREQUENCIES_HZ);
    return impedances.map((z, index) => {
      const frequency = TEST_FREQUENCIES_HZ[index]!;
      const where = label === "" ? "jack" : `jack, ${label}`;
      const named = { label: `${where}, ${frequency} Hz`, settings: rawSettings(controls, settings), frequency };
      return { ...named, ...reading(z, frequency) };
    });
  });
}
