import wavEncoder from "wav-encoder";
import { type Across, coilImpedance } from "../../src/choice/fit/coil-model.ts";
import type { LossModel } from "../../src/choice/fit/coil-shapes.ts";
import { measuringSignal, type SignalKind } from "../../src/measure/signal/measuring-signal.ts";
import type { CoilValues } from "../../src/response/coil-ladder.ts";
import { exciterAt, heardFrom } from "./simulated-metal.ts";
import { admittance, type Complex, LOAD, over } from "./simulated-pickup.ts";
import { heardThrough, recorded } from "./simulated-recording.ts";

/** An instrument input with its lead. */
export const LEAD_INPUT: Across = { resistance: 1e6, capacitance: 160e-12 };

export type CoilMethod = "two-loads" | "series-resistor";

/** A coil, and what it is recorded with. */
export interface Bench {
  readonly name: string;
  readonly method: CoilMethod;
  readonly coil: CoilValues;
  readonly loss: LossModel;
  readonly signal: SignalKind;
  readonly rateHz: 44_100 | 48_000;
  readonly bits: 16 | 24;
}

export const OHMS = 470e3;

/** What the second channel is to the first, behind the resistor over a coil or nothing. */
const behind = (coil: CoilValues | undefined) => (hz: number) => {
  const [gi, bi] = admittance(LEAD_INPUT, hz);
  if (!coil) return over([1, 0], [1 + OHMS * gi, OHMS * bi]);
  const { re, im } = coilImpedance(coil, Math.max(hz, 1));
  const [g, b] = over([1, 0], [re, im]);
  return over([1, 0], [1 + OHMS * (g + gi), OHMS * (b + bi)]);
};

type Channels = readonly ((hz: number) => Complex)[];

function filesOf({ method, coil }: Bench): Readonly<Record<string, Channels>> {
  if (method === "series-resistor") {
    const before = (): Complex => [1, 0];
    return { measured: [before, behind(coil)], open: [before, behind(undefined)] };
  }
  const exciter = exciterAt(3400);
  return { unloaded: [heardFrom(coil, exciter, LEAD_INPUT)], loaded: [heardFrom(coil, exciter, LEAD_INPUT, LOAD)] };
}

const DRIFT_PPM = 40;
/** RMS at −90 dB of full scale. */
const NOISE = 10 ** (-90 / 20);
const HUM = { hz: 50, peak: 1e-3 };
const GAIN = 0.8;

/** Without dither: that of the project's own files is the same in every one, and would be an error that no trial averages out. */
const wavOf = (channelData: Float32Array[], sampleRate: number, bitDepth: 16 | 24) =>
  new Uint8Array(wavEncoder.encode.sync({ sampleRate, channelData }, { bitDepth, symmetric: true }));

/**
 * A measurement's files as often as asked: what comes into the input is simulated once, by a clock that is off; hiss, the hum's phase
 * and the rounding to bits are new each time.
 */
export function recorder(bench: Bench): (seed: number) => Record<string, Uint8Array> {
  const { signal, rateHz, bits } = bench;
  const played = measuringSignal(signal, rateHz);
  const arrivals = Object.entries(filesOf(bench)).map(([name, channels]) => {
    const all = channels.map((transfer) => recorded(played, rateHz, { transfer, driftPpm: DRIFT_PPM }));
    return [name, all] as const;
  });
  return (seed) => {
    const files = arrivals.map(([name, channels], file) => {
      const taken = channels.map((channel, i) => {
        const hum = { ...HUM, phase: 7 * seed + 3 * file + 0.1 * i };
        return heardThrough(channel, rateHz, { gain: GAIN, noise: NOISE, hum, bits, seed: 4 * seed + 2 * file + i });
      });
      return [name, wavOf(taken, rateHz, bits)];
    });
    return Object.fromEntries(files);
  };
}
