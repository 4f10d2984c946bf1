import { BoundedMap } from "../bounded-map.ts";
import type { Build } from "../build-file/schema.ts";
import type { Settings } from "../build-file/settings.ts";
import { ParametricNetwork } from "../network/parametric.ts";
import { CircuitMaker } from "./circuit.ts";
import type { CoilSource } from "./pickup-elements.ts";
import { rationalTransfers } from "./rational-transfers.ts";
import { solvedTransfers, type Transfers } from "./transfers.ts";

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
    const solve = () => solvedTransfers(this.#maker.circuitIn(settings), sources);
    if (fast) return rationalTransfers(fast, sources, solve);
    const { network, outputNode } = this.#maker.circuitIn(settings);
    const plain = new ParametricNetwork(network, outputNode).transfersAt([]);
    return plain ? rationalTransfers(plain, sources, solve) : solve();
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
