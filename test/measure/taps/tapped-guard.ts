import type { Build } from "../../../src/build-file/schema.ts";
import { createRealFft } from "../../../src/filter/real-fft.ts";
import type { TapStep } from "../../../src/measure/taps/plan-taps.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { solvedTransfers } from "../../../src/response/transfers.ts";
import { type Random, seeded } from "../../bench/faults/blind-trials.ts";

/** What tapping was like. */
export interface Hand {
  readonly rateHz?: number;
  readonly seed: number;
  /** RMS of white noise, of full scale. */
  readonly noise?: number;
  /** Peak of the mains' fundamental at the input, of full scale; harmonics come with it. */
  readonly hum?: number;
  readonly mainsHz?: number;
  /** The tool on a pole that nothing grounds brings a person's hum with it: this much of `hum`. */
  readonly touchHum?: number;
  /** Peak of the loudest tap, of full scale. */
  readonly peak?: number;
  /** Whether magnets, tool or plug are the other way about. */
  readonly isFlipped?: boolean;
  /** How many taps on a row. */
  readonly tapsOn?: (step: number) => number;
  /** Seconds by which a step begins after its time. */
  readonly late?: (step: number) => number;
  readonly clicks?: number;
}

const RUN_UP_SECONDS = 1.5;
const SNIPPET_SECONDS = 3.5;
/** Flux through a coil as steel comes within a gap: a fraction, 1 at the pole. */
const GAP_METRES = 1.6e-3;
const fluxAt = (gap: number) => (1 + gap / GAP_METRES) ** -1.6;

const between = (random: Random, low: number, high: number) => low + (high - low) * random();
const gaussian = (random: Random) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Gap between tool and pole over time, for one touch: comes at a speed, bounces, rests, is pulled off. */
function gapOver(random: Random, rateHz: number): Float64Array {
  const speed = 0.3 * 2 ** between(random, -1, 1);
  const [tallest, dt] = [0.02, 1 / rateHz];
  const gaps: number[] = [];
  for (let gap = tallest; gap > 0; gap -= speed * dt) gaps.push(gap);
  let rebound = speed * between(random, 0, 0.35);
  // The magnet pulls the tool back: some hundred metres a second squared.
  for (let bounce = 0; bounce < 3 && rebound > 0.01; bounce += 1, rebound *= 0.3) {
    const pull = between(random, 80, 250);
    for (let t = 0; t < (2 * rebound) / pull; t += dt) gaps.push(rebound * t - (pull * t * t) / 2);
  }
  const rests = random() < 0.15 ? between(random, 0.03, 0.06) : between(random, 0.06, 0.28);
  for (let t = 0; t < rests; t += dt) gaps.push(0);
  const away = between(random, 15, 90);
  for (let t = 0; gaps.at(-1)! < tallest; t += dt) gaps.push(Math.min(tallest, (away * t * t) / 2));
  return Float64Array.from(gaps, (gap) => Math.max(0, gap));
}

/** EMF of a unit coil for some taps, beginning after `RUN_UP_SECONDS`/3. */
function tapsEmf(random: Random, rateHz: number, taps: number): { emf: Float64Array; rests: Float64Array } {
  const emf = new Float64Array(SNIPPET_SECONDS * rateHz);
  const rests = new Float64Array(emf.length);
  let at = 0.3;
  for (let tap = 0; tap < taps; tap += 1) {
    const gaps = gapOver(random, rateHz);
    const first = Math.round(at * rateHz);
    for (let n = 1; n < gaps.length && first + n < emf.length; n += 1) {
      emf[first + n]! += (fluxAt(gaps[n]!) - fluxAt(gaps[n - 1]!)) * rateHz;
      if (gaps[n] === 0) rests[first + n] = 1;
    }
    at += gaps.length / rateHz + between(random, 0.15, 0.45);
  }
  return { emf, rests };
}

/** Through a linear network, and an input that stands on a high-pass of 8 Hz. */
function through(samples: Float64Array, rateHz: number, table: { re: Float64Array; im: Float64Array }): Float64Array {
  const size = 2 ** Math.ceil(Math.log2(1.15 * samples.length));
  const fft = createRealFft(size);
  const [padded, spectrum] = [new Float64Array(size), new Float64Array(size + 2)];
  padded.set(samples);
  fft.forward(spectrum, padded);
  for (let k = 0; k <= size / 2; k += 1) {
    const hz = (k * rateHz) / size;
    const [i, share] = [Math.floor(hz / GRID_HZ), (hz % GRID_HZ) / GRID_HZ];
    const re = table.re[i]! + share * (table.re[i + 1]! - table.re[i]!);
    const im = table.im[i]! + share * (table.im[i + 1]! - table.im[i]!);
    const x = hz / 8;
    // jx / (1 + jx)
    const [a, b] = [(x * x) / (1 + x * x), x / (1 + x * x)];
    const [c, d] = [re * a - im * b, re * b + im * a];
    const [u, v] = [spectrum[2 * k]!, spectrum[2 * k + 1]!];
    spectrum[2 * k] = u * c - v * d;
    spectrum[2 * k + 1] = u * d + v * c;
  }
  fft.inverse(padded, spectrum);
  return padded.subarray(0, samples.length);
}

/** Grid of a snippet's spectrum; what lies between is straight enough below the coils' peaks. */
const GRID_HZ = 8;

type Spectra = readonly { readonly re: Float64Array; readonly im: Float64Array }[];

/** What each coil's EMF makes at the jack, setting after setting. */
class Jack {
  readonly #maker: CircuitMaker;
  readonly #grid: Float64Array;
  readonly #known = new Map<TapStep["settings"], Spectra>();

  constructor(guard: Build, rateHz: number) {
    const { cable: _, ...parts } = guard;
    this.#maker = new CircuitMaker({ ...parts, load: { resistance: 1e6, capacitance: 400e-12 } });
    this.#grid = Float64Array.from({ length: rateHz / 2 / GRID_HZ + 2 }, (_, k) => Math.max(1, k * GRID_HZ));
  }

  #spectra(settings: TapStep["settings"]): Spectra {
    const known =
      this.#known.get(settings) ??
      solvedTransfers(this.#maker.circuitIn(settings), this.#maker.sources).perSource(this.#grid);
    this.#known.set(settings, known);
    return known;
  }

  /** Of a tap on a row: through its own coil, a part of it through the one on the same magnet, a trace through all. */
  transfer(step: TapStep, random: Random): { re: Float64Array; im: Float64Array } {
    const spectra = this.#spectra(step.settings);
    const shares = this.#maker.sources.map(({ pickup, coil, emf }) => {
      if (pickup !== step.pickup) return emf * 0.004 * (random() < 0.5 ? 1 : -1);
      return coil === step.coil ? emf : emf * between(random, 0.05, 0.25);
    });
    const sum = (part: "re" | "im") =>
      this.#grid.map((_, i) => spectra.reduce((whole, each, k) => whole + shares[k]! * each[part][i]!, 0));
    return { re: sum("re"), im: sum("im") };
  }
}

/** A lever's contacts: fractions of a millisecond, both ways, now and then a scrape. */
function addClick(take: Float64Array, at: number, rateHz: number, peak: number, random: Random): void {
  for (let burst = 0; burst < 1 + 3 * random(); burst += 1) {
    const first = Math.round((at + 0.05 * random()) * rateHz);
    const length = Math.ceil(rateHz * between(random, 0.0002, 0.001));
    for (let n = 0; n < length; n += 1) if (first + n < take.length) take[first + n]! += peak * gaussian(random);
  }
}

/** A fundamental of 1 and what comes with it in a room, each a phasor turned sample by sample. */
function humWave(rateHz: number, mainsHz: number, length: number, random: Random): Float64Array {
  const wave = new Float64Array(length);
  [1, 0.1, 0.4, 0.05, 0.25, 0.03, 0.15, 0.02, 0.08].forEach((size, k) => {
    const turn = (2 * Math.PI * mainsHz * (k + 1)) / rateHz;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const phase = 2 * Math.PI * random();
    let [x, y] = [size * Math.cos(phase), size * Math.sin(phase)];
    for (let n = 0; n < length; n += 1) {
      wave[n]! += y;
      [x, y] = [x * c - y * s, x * s + y * c];
    }
  });
  return wave;
}

/** A take of a plan, tapped on a guard that may not be as drawn. Every row's poles have a strength of their own, within 4 dB. */
export function tappedTake(guard: Build, steps: readonly TapStep[], hand: Hand): Float32Array {
  const { rateHz = 48_000, seed, noise = 3e-5, hum = 3e-3, peak = 0.4, clicks = 0.02, touchHum = 0.5 } = hand;
  const random = seeded(seed);
  const mainsHz = hand.mainsHz ?? (random() < 0.5 ? 50 : 60) + between(random, -0.05, 0.05);
  const length = Math.ceil((steps.at(-1)!.at + RUN_UP_SECONDS + SNIPPET_SECONDS + 1) * rateHz);
  const jack = new Jack(guard, rateHz);
  const [take, rests] = [new Float64Array(length), new Float64Array(length)];
  const rows = new Map<string, number>();
  steps.forEach((step, i) => {
    const row = `${step.pickup} ${step.coil}`;
    const strength = rows.get(row) ?? 10 ** (between(random, -4, 4) / 20);
    rows.set(row, strength);
    const { emf, rests: touched } = tapsEmf(random, rateHz, hand.tapsOn?.(i) ?? 3);
    const heard = through(emf, rateHz, jack.transfer(step, random));
    const first = Math.round((RUN_UP_SECONDS + step.at + (hand.late?.(i) ?? between(random, -0.2, 0.5))) * rateHz);
    heard.forEach((each, n) => {
      if (first + n >= length) return;
      take[first + n]! += strength * each;
      rests[first + n] = Math.max(rests[first + n]!, touched[n]!);
    });
  });
  const loudest = take.reduce((most, each) => Math.max(most, Math.abs(each)), 0) || 1;
  const gain = ((hand.isFlipped ? -1 : 1) * peak) / loudest;
  for (let n = 0; n < length; n += 1) take[n]! *= gain;
  steps.slice(1).forEach((step, i) => {
    if (step.settings === steps[i]!.settings) return;
    addClick(take, RUN_UP_SECONDS + step.at - 1.2 * random() - 0.5, rateHz, clicks, random);
  });
  const wave = humWave(rateHz, mainsHz, length, random);
  return Float32Array.from(take, (each, n) => {
    const value = each + hum * (1 + touchHum * rests[n]!) * wave[n]! + noise * gaussian(random);
    return Math.max(-1, Math.min(1, value));
  });
}
