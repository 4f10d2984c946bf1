import type { Build, Coil } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { solveTransfers } from "../../network/nodal-analysis.ts";
import { assemblePencil } from "../../network/pencil.ts";
import { CircuitMaker } from "../circuit.ts";
import { REFERENCE_HZ } from "../features.ts";
import type { CoilSource } from "../pickup-elements.ts";

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const magnitudeOf = ({ re, im }: Complex): number => Math.hypot(re, im);

/** What is done to one coil to learn how the others are joined to it. */
export type Tampering = "lifted" | "shorted";

/** A lead in the air: far above any load, small enough to leave the equations well conditioned. */
const LIFTED_OHMS = 1e10;
/** A wire across the coil, in the coil's own place. */
const SHORTED: Pick<Coil, "resistance" | "inductance" | "capacitance"> = {
  resistance: 1e-3,
  inductance: 1e-9,
  capacitance: 0,
};

function tampered(coil: Coil, tampering: Tampering): Coil {
  if (tampering === "lifted") return { ...coil, resistance: LIFTED_OHMS, capacitance: 0 };
  const { loss: _, ...rest } = coil;
  return { ...rest, ...SHORTED };
}

/** Coils that share a core would talk to each other past the wires; the wiring alone is asked here. */
function withoutCoupling(build: Build): Build {
  const parts = Object.entries(build.parts).map(([name, part]) => {
    if (part.kind !== "pickup") return [name, part] as const;
    const { coupling: _, ...rest } = part;
    return [name, rest] as const;
  });
  return { ...build, parts: Object.fromEntries(parts) };
}

function withCoil(build: Build, { pickup, coil }: CoilSource, tampering: Tampering): Build {
  const part = build.parts[pickup];
  if (part?.kind !== "pickup") return build;
  const coils = { ...part.coils, [coil]: tampered(part.coils[coil]!, tampering) };
  return { ...build, parts: { ...build.parts, [pickup]: { ...part, coils } } };
}

/**
 * Asks the wiring how each coil reaches the jack, at the frequency that curves are measured against: low enough that coils
 * are little more than their resistance, high enough that a series capacitor still passes.
 */
export class PositionProbe {
  readonly sources: readonly CoilSource[];
  readonly #build: Build;
  readonly #makers = new Map<string, CircuitMaker>();

  constructor(build: Build) {
    this.#build = withoutCoupling(build);
    this.sources = this.#maker("as built", () => this.#build).sources;
  }

  #maker(key: string, build: () => Build): CircuitMaker {
    const known = this.#makers.get(key);
    if (known) return known;
    const maker = new CircuitMaker(build());
    this.#makers.set(key, maker);
    return maker;
  }

  #transfers(maker: CircuitMaker, settings: Settings): Complex[] {
    const { network, outputNode } = maker.circuitIn(settings);
    const spectra = solveTransfers(assemblePencil(network), outputNode, Float64Array.of(REFERENCE_HZ));
    return spectra.map(({ re, im }) => ({ re: re[0]!, im: im[0]! }));
  }

  /** Voltage at the jack for a unit EMF of each coil in turn (V/V). */
  transfersIn(settings: Settings): Complex[] {
    return this.#transfers(
      this.#maker("as built", () => this.#build),
      settings,
    );
  }

  /** The same with one coil's lead lifted, or the coil shorted. */
  transfersWithout(settings: Settings, source: number, tampering: Tampering): Complex[] {
    const maker = this.#maker(`${source} ${tampering}`, () => withCoil(this.#build, this.sources[source]!, tampering));
    return this.#transfers(maker, settings);
  }
}
