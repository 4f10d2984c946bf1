import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { type AmplifierNoise, USUAL_TEMPERATURE_KELVIN } from "./amplifier.ts";
import { Guitar } from "./guitar.ts";
import { Hiss } from "./hiss-signal.ts";
import { addRepeated, humPeriod } from "./hum-signal.ts";
import type { MainsHz, RoomField } from "./room.ts";

/** What of a guitar's noise is to be heard. */
export interface NoiseWish {
  /** Null without hum. */
  readonly mainsHz: MainsHz | null;
  /** Whether the coils' share of the hum is all of it, as if the wires took up none. */
  readonly isCoilsOnly: boolean;
  readonly isHissing: boolean;
  readonly room: RoomField;
  readonly amplifier: AmplifierNoise;
}

interface Periods {
  readonly hum: Float64Array | null;
  readonly hiss: Float64Array | null;
}

/** Of a knob that is turned: more than anybody goes back to. */
const MAX_KEPT = 4;

/** Adds hum and hiss to what a guard gives, at their true level: ±1 is ±1 V at the jack. */
export class NoiseMaker {
  readonly #wish: NoiseWish;
  readonly #guitar: Guitar;
  readonly #sampleRateHz: number;
  readonly #hiss: Hiss | null;
  readonly #kept = new Map<Settings, Periods>();

  constructor(build: Build, wish: NoiseWish, sampleRateHz: number) {
    this.#wish = wish;
    this.#guitar = new Guitar(build);
    this.#sampleRateHz = sampleRateHz;
    this.#hiss = wish.isHissing ? new Hiss(sampleRateHz) : null;
  }

  /** The noise of a setting, each part over a time after which it comes again without a seam: volts, to be repeated and summed. */
  periodsIn(settings: Settings): readonly Float64Array[] {
    const { hum, hiss } = this.#periodsIn(settings);
    return [hum, hiss].filter((period) => period !== null);
  }

  /** Adds the noise of a setting to samples at the jack, in place; the same in every channel. */
  addTo(channels: readonly Float32Array[], settings: Settings): void {
    const periods = this.periodsIn(settings);
    for (const samples of channels) for (const period of periods) addRepeated(samples, period, this.#sampleRateHz);
  }

  #periodsIn(settings: Settings): Periods {
    const known = this.#kept.get(settings);
    if (known) return known;
    const periods = { hum: this.#humIn(settings), hiss: this.#hissIn(settings) };
    if (this.#kept.size >= MAX_KEPT) this.#kept.clear();
    this.#kept.set(settings, periods);
    return periods;
  }

  #humIn(settings: Settings): Float64Array | null {
    const { mainsHz, isCoilsOnly, room } = this.#wish;
    if (mainsHz === null) return null;
    const lines = this.#guitar.humIn(settings, { mainsHz, room });
    const wanted = isCoilsOnly ? lines.map((line) => ({ ...line, loops: [0, 0], runs: [0, 0] }) as const) : lines;
    return humPeriod(wanted, this.#sampleRateHz);
  }

  #hissIn(settings: Settings): Float64Array | null {
    const { amplifier } = this.#wish;
    if (!this.#hiss) return null;
    return this.#hiss.period((frequenciesHz) => {
      const density = this.#guitar.hissIn(settings, frequenciesHz, { kelvin: USUAL_TEMPERATURE_KELVIN, amplifier });
      return density.circuit.map((power, index) => power + density.amplifier[index]!);
    });
  }
}
