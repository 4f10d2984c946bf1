import type { Build } from "../../build-file/schema.ts";
import { type Settings, settingsKey } from "../../build-file/settings.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import type { CoilSource } from "../../response/pickup-elements.ts";
import { solvedTransfers } from "../../response/transfers.ts";

/** Where a tap of some milliseconds has most of what is looked at. */
const TAP_HZ = Float64Array.of(80, 120, 180, 270);

/** What an interface's instrument input loads a guitar with. */
export interface TapInput {
  readonly resistance: number;
  /** Its own and its lead's. */
  readonly capacitance: number;
}

/** Common practice, no source: what manuals say of instrument inputs, and three metres of lead. */
export const USUAL_TAP_INPUT: TapInput = { resistance: 1e6, capacitance: 400e-12 };

/** A coil's EMF at the jack, V of one reference coil's EMF: what comes at once, and what is turned by a quarter. */
export interface TapTransfer {
  readonly pickup: string;
  readonly coil: string;
  readonly re: number;
  readonly im: number;
}

const meanOf = (values: Float64Array) => values.reduce((sum, each) => sum + each, 0) / values.length;

/** What a tap on each coil's poles makes at the jack of a build, setting after setting. */
export class TapTransfers {
  readonly #maker: CircuitMaker;
  readonly #known = new Map<string, readonly TapTransfer[]>();
  readonly #checkpoint: Checkpoint;

  constructor(
    build: Build,
    { resistance, capacitance }: TapInput = USUAL_TAP_INPUT,
    checkpoint: Checkpoint = NO_CHECKPOINT,
  ) {
    const { cable: _, ...guard } = build;
    this.#checkpoint = checkpoint;
    this.#maker = new CircuitMaker({ ...guard, load: { resistance, capacitance } });
  }

  get sources(): readonly CoilSource[] {
    return this.#maker.sources;
  }

  in(settings: Settings): readonly TapTransfer[] {
    const key = settingsKey(settings);
    const known = this.#known.get(key) ?? this.#solved(settings);
    this.#known.set(key, known);
    return known;
  }

  #solved(settings: Settings): TapTransfer[] {
    this.#checkpoint.checkpoint();
    const { sources } = this.#maker;
    const spectra = solvedTransfers(this.#maker.circuitIn(settings), sources).perSource(TAP_HZ);
    return sources.map(({ pickup, coil, emf }, i) => ({
      pickup,
      coil,
      re: emf * meanOf(spectra[i]!.re),
      im: emf * meanOf(spectra[i]!.im),
    }));
  }
}
