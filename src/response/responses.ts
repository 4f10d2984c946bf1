import { BoundedMap } from "../bounded-map.ts";
import type { Build } from "../build-file/schema.ts";
import type { Settings } from "../build-file/settings.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import { ParametricNetwork } from "../network/parametric.ts";
import { CircuitMaker } from "./circuit.ts";
import { type LevelAndPhase, magnitudeDb, unwrappedPhaseDegrees } from "./curve.ts";
import { type Features, findFeatures } from "./features.ts";
import { logSpaced } from "./frequencies.ts";
import type { CoilSource } from "./pickup-elements.ts";
import { rationalTransfers, solvedTransfers, type Transfers } from "./transfers.ts";

export type { Transfers } from "./transfers.ts";

/** Five positions by two push-pulls, and some. A template holds some tens of kilobytes; with twenty pots, a megabyte. */
const MAX_TEMPLATES = 24;

/** Tracks of a dozen pots. The work for each setting grows with the third power of their number, and more than twenty save nothing. */
const MAX_VARIABLES = 24;

export interface EngineOptions {
  readonly maker?: CircuitMaker;
  /** Whether every setting is likely to be asked for again, so that templates pay from the first. */
  readonly isKept?: boolean;
}

/** Settings to come: the pots that none of them moves, and the templates by the rest. */
interface Plan {
  readonly atRest: readonly string[];
  /** For every key that more than one setting has; null until the first of them is asked for. */
  readonly templates: Map<string, ParametricNetwork | null>;
}

/** Computes transfer functions of one build, setting after setting. */
export class ResponseEngine {
  readonly #maker: CircuitMaker;
  readonly #isKept: boolean;
  /** By the switches' positions; null where they were asked for once, and a template has not paid yet. */
  readonly #templates = new BoundedMap<string, ParametricNetwork | null>(MAX_TEMPLATES);
  #plan: Plan | undefined;

  constructor(build: Build, { maker = new CircuitMaker(build), isKept = false }: EngineOptions = {}) {
    this.#maker = maker;
    this.#isKept = isKept;
  }

  /** An engine for the same parts and wires with other values; it shares what the wiring alone decides. */
  withValues(build: Build): ResponseEngine {
    return new ResponseEngine(build, { maker: new CircuitMaker(build, this.#maker.wiring) });
  }

  get sources(): readonly CoilSource[] {
    return this.#maker.sources;
  }

  /** The transfers in a setting: from polynomials where they reproduce the network, else solved frequency by frequency. */
  transfersIn(settings: Settings): Transfers {
    const { sources } = this.#maker;
    const template = this.#plannedTemplateIn(settings) ?? this.#templateIn(settings);
    const fast = template?.transfersAt(this.#maker.trackOhms(settings));
    if (fast) return rationalTransfers(fast, sources);
    const circuit = this.#maker.circuitIn(settings);
    const plain = new ParametricNetwork(circuit.network, circuit.outputNode).transfersAt([]);
    return plain ? rationalTransfers(plain, sources) : solvedTransfers(circuit, sources);
  }

  /** Tells which settings will be asked for. Where several differ in dials alone they share a template of their own. */
  plan(settings: readonly Settings[]): void {
    this.#plan = undefined;
    const atRest = this.#maker.potsAtRest(settings);
    if (this.#maker.variableCount(atRest) > MAX_VARIABLES) return;
    const templates = new Map<string, null>();
    const seen = new Set<string>();
    for (const state of settings) {
      const key = this.#maker.templateKey(state, atRest);
      if (seen.has(key)) templates.set(key, null);
      seen.add(key);
    }
    this.#plan = { atRest, templates };
  }

  #plannedTemplateIn(settings: Settings): ParametricNetwork | undefined {
    if (!this.#plan) return undefined;
    const { atRest, templates } = this.#plan;
    const key = this.#maker.templateKey(settings, atRest);
    const known = templates.get(key);
    if (known !== null) return known;
    const template = this.#newTemplate(settings, atRest);
    templates.set(key, template);
    return template;
  }

  /** The template for these switch positions, from their second asking on. */
  #templateIn(settings: Settings): ParametricNetwork | null {
    if (this.#maker.variableCount() > MAX_VARIABLES) return null;
    const key = this.#maker.templateKey(settings);
    const known = this.#templates.get(key);
    if (known) return known;
    const template = known === undefined && !this.#isKept ? null : this.#newTemplate(settings);
    this.#templates.set(key, template);
    return template;
  }

  #newTemplate(settings: Settings, atRest?: readonly string[]): ParametricNetwork {
    const { network, outputNode } = this.#maker.templateIn(settings, atRest);
    return new ParametricNetwork(network, outputNode);
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

/** Neighbours closer than this ratio need no frequencies between them for the phase to be followed. */
const MAX_UNWRAP_RATIO = 1.05;

/** Rising frequencies with none farther from the last than the ratio, so that unwrapping cannot miss a turn. */
function bridged(rising: Float64Array): Float64Array {
  const filled: number[] = [];
  for (const frequency of rising) {
    const last = filled.at(-1);
    if (last !== undefined && frequency / last > MAX_UNWRAP_RATIO) {
      const steps = Math.ceil(Math.log(frequency / last) / Math.log(MAX_UNWRAP_RATIO));
      filled.push(...logSpaced(last, frequency, steps + 1).subarray(1, steps));
    }
    filled.push(frequency);
  }
  return Float64Array.from(filled);
}

function isFineEnough(frequenciesHz: Float64Array): boolean {
  return frequenciesHz.every((frequency, i) => {
    const ratio = i === 0 ? 1 : frequency / frequenciesHz[i - 1]!;
    return ratio >= 1 && ratio <= MAX_UNWRAP_RATIO;
  });
}

type Transfer = (frequenciesHz: Float64Array) => Spectrum;

function levelAndPhase(transfer: Transfer, frequenciesHz: Float64Array): LevelAndPhase {
  const spectrum = transfer(frequenciesHz);
  const magnitude = magnitudeDb(spectrum);
  if (isFineEnough(frequenciesHz)) return { magnitude, phase: unwrappedPhaseDegrees(spectrum) };
  const fine = bridged(frequenciesHz.toSorted());
  const phases = unwrappedPhaseDegrees(transfer(fine));
  const byFrequency = new Map(Array.from(fine, (frequency, i) => [frequency, phases[i]!]));
  return { magnitude, phase: frequenciesHz.map((frequency) => byFrequency.get(frequency)!) };
}

/**
 * The curve of one setting at the given frequencies (Hz, above 0, in any order).
 * Magnitude is in dB re the EMF of a coil with output 1; phase in degrees, unwrapped from the lowest frequency up.
 */
export function curveOf(transfers: Transfers, frequenciesHz: Float64Array, withSources = false): Curve {
  const quick = isFineEnough(frequenciesHz) ? transfers.levelAndPhase?.(frequenciesHz) : undefined;
  const curve = {
    ...(quick ?? levelAndPhase((list) => transfers.total(list), frequenciesHz)),
    ...findFeatures(transfers.power()),
  };
  if (!withSources) return curve;
  const sources = transfers.sources.map(({ pickup, coil }, index) => ({
    pickup,
    coil,
    ...levelAndPhase((list) => transfers.perSource(list)[index]!, frequenciesHz),
  }));
  return { ...curve, sources };
}
