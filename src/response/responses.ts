import type { Build } from "../build/schema.ts";
import type { Settings } from "../build/settings.ts";
import { assemblePencil, type Spectrum, solveTransfers } from "../network/nodal-analysis.ts";
import { CircuitMaker } from "./circuit.ts";
import { magnitudeDb, unwrappedPhaseDegrees, weightedSum } from "./curve.ts";
import { type Features, findFeatures } from "./features.ts";
import { logSpaced } from "./frequencies.ts";
import type { CoilSource } from "./pickup-elements.ts";

/** The transfer functions of a build in one setting, from each coil's unit EMF to the jack. */
export interface Transfers {
  readonly sources: readonly CoilSource[];
  /** One spectrum per source, V/V. */
  perSource(frequenciesHz: Float64Array): Spectrum[];
  /** All coils driven together, each with its own size and sign. */
  total(frequenciesHz: Float64Array): Spectrum;
}

/** Computes transfer functions of one build, setting after setting. */
export class ResponseEngine {
  readonly #maker: CircuitMaker;

  constructor(build: Build) {
    this.#maker = new CircuitMaker(build);
  }

  get sources(): readonly CoilSource[] {
    return this.#maker.sources;
  }

  transfersIn(settings: Settings): Transfers {
    const { network, outputNode } = this.#maker.circuitIn(settings);
    const pencil = assemblePencil(network);
    const { sources } = this.#maker;
    const weights = sources.map((source) => source.emf);
    const perSource = (frequenciesHz: Float64Array) => solveTransfers(pencil, outputNode, frequenciesHz);
    return { sources, perSource, total: (frequenciesHz) => weightedSum(perSource(frequenciesHz), weights) };
  }
}

export interface SourceCurve {
  readonly pickup: string;
  readonly coil: string;
  /** dB re this coil's unit EMF, without its own size and sign. */
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
}

export interface Curve extends Features {
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
  readonly sources?: readonly SourceCurve[];
}

/** A grid fine enough that phase cannot turn by 180° between neighbours, for unwrapping lists with wide gaps. */
const UNWRAP_GRID = logSpaced(5, 40_000, 400);

function phaseAt(transfer: (frequenciesHz: Float64Array) => Spectrum, frequenciesHz: Float64Array): Float64Array {
  const merged = Float64Array.from([...UNWRAP_GRID, ...frequenciesHz]).sort();
  const phase = unwrappedPhaseDegrees(transfer(merged));
  const byFrequency = new Map(Array.from(merged, (frequency, i) => [frequency, phase[i]!]));
  return frequenciesHz.map((frequency) => byFrequency.get(frequency)!);
}

/**
 * The curve of one setting at the given frequencies (Hz, above 0, in any order).
 * Magnitude is in dB re the EMF of a coil with output 1; phase in degrees, unwrapped from 5 Hz up.
 */
export function curveOf(transfers: Transfers, frequenciesHz: Float64Array, withSources = false): Curve {
  const total = (list: Float64Array) => transfers.total(list);
  const curve = {
    magnitude: magnitudeDb(total(frequenciesHz)),
    phase: phaseAt(total, frequenciesHz),
    ...findFeatures((list) => magnitudeDb(total(list))),
  };
  if (!withSources) return curve;
  const spectra = transfers.perSource(frequenciesHz);
  const sources = transfers.sources.map(({ pickup, coil }, index) => ({
    pickup,
    coil,
    magnitude: magnitudeDb(spectra[index]!),
    phase: phaseAt((list) => transfers.perSource(list)[index]!, frequenciesHz),
  }));
  return { ...curve, sources };
}
