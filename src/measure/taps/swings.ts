import { TAP_RATE_HZ, type TapSignal } from "./tap-signal.ts";
import { medianOf } from "./without-hum.ts";

/** One coming or going of the tool, as the input saw it. */
export interface Swing {
  /** Seconds of the take, of its top. */
  readonly at: number;
  /** Of its first lobe that counts. */
  readonly sign: 1 | -1;
  /** Of its top, of full scale. */
  readonly size: number;
  /** −1 where all of it lies before its top, as of a tool that comes and stops; 1 where all lies after, as of one that leaves. */
  readonly lean: number;
  /** How far its edges and what rings on them stand above its lobe. */
  readonly sharpness: number;
  readonly isClipped: boolean;
}

const NOISE_WINDOW_SECONDS = 3;
const NOISE_STEP_SECONDS = 0.5;
/** Of white noise once in 500 million samples; hum that changes as the tool is touched stays under it with what it leaves. */
const STANDS_OUT = 6;
/** Normal noise has its median size at so much of its deviation. */
const MEDIAN_OF_NORMAL = 0.6745;
/** Under a step of 16 bits there is nothing. */
const LEAST = 2 ** -15;
/** Lobes nearer than this are one swing and its bounces. */
const ONE_SWING_SECONDS = 0.03;
/** A bounce before the first lobe is lower than this share of the top. */
const COUNTS = 0.4;
const LEAN_SECONDS = 0.012;
/** What a contact makes in a fraction of a millisecond stands further above its low part than the quickest tap with the coil's ringing. */
const CLICK = 8;
const FULL_SCALE = 0.985;

/** What a swing must exceed, each half second. */
export function noiseFloor(samples: Float64Array): Float64Array {
  const [step, half] = [NOISE_STEP_SECONDS * TAP_RATE_HZ, (NOISE_WINDOW_SECONDS * TAP_RATE_HZ) / 2];
  return Float64Array.from({ length: Math.ceil(samples.length / step) }, (_, k) => {
    const around = samples.subarray(Math.max(0, k * step - half), k * step + half);
    return Math.max(LEAST, (STANDS_OUT * medianOf(around.map(Math.abs))) / MEDIAN_OF_NORMAL);
  });
}

export const floorAt = (floor: Float64Array, seconds: number): number =>
  floor[Math.max(0, Math.min(floor.length - 1, Math.round(seconds / NOISE_STEP_SECONDS)))]!;

/** About a loud tap its own tail, through an input's capacitor, is no swing: this share of it, so long. */
const TAIL_SHARE = 0.08;
const TAIL_SECONDS = 0.35;

/** The largest size within a reach of each sample: block by block, which is near enough. */
function largestNear(samples: Float64Array): (n: number) => number {
  const block = Math.round((TAIL_SECONDS * TAP_RATE_HZ) / 4);
  const tops = Float64Array.from({ length: Math.ceil(samples.length / block) }, (_, k) =>
    samples.subarray(k * block, (k + 1) * block).reduce((most, each) => Math.max(most, Math.abs(each)), 0),
  );
  const near = tops.map((_, k) => Math.max(...tops.subarray(Math.max(0, k - 4), k + 5)));
  return (n) => near[Math.floor(n / block)]!;
}

interface Span {
  readonly from: number;
  to: number;
}

function spansAbove(samples: Float64Array, floor: Float64Array): Span[] {
  const spans: Span[] = [];
  const near = largestNear(samples);
  for (let n = 0; n < samples.length; n += 1) {
    if (Math.abs(samples[n]!) <= Math.max(TAIL_SHARE * near(n), floorAt(floor, n / TAP_RATE_HZ))) continue;
    const last = spans.at(-1);
    if (last && n - last.to <= ONE_SWING_SECONDS * TAP_RATE_HZ) last.to = n;
    else spans.push({ from: n, to: n });
  }
  return spans;
}

const topIn = (values: Float64Array, from: number, to: number) =>
  values.subarray(Math.max(0, from), to + 1).reduce((most, each) => Math.max(most, Math.abs(each)), 0);

/** Of what has the top's own sign about it, how much more lies after than before. */
function leanAt(samples: Float64Array, top: number): number {
  const reach = Math.round(LEAN_SECONDS * TAP_RATE_HZ);
  const sign = Math.sign(samples[top]!);
  let [before, after] = [0, 0];
  for (let k = 1; k <= reach; k += 1) {
    before += Math.max(0, sign * (samples[top - k] ?? 0));
    after += Math.max(0, sign * (samples[top + k] ?? 0));
  }
  return before + after > 0 ? (after - before) / (after + before) : 0;
}

function swingIn(samples: Float64Array, { tops, edges }: TapSignal, { from, to }: Span): Swing | undefined {
  const size = topIn(samples, from, to);
  const sharpness = topIn(edges, from - 3, to + 3) / size;
  if (sharpness > CLICK) return undefined;
  let first = from;
  while (Math.abs(samples[first]!) < COUNTS * size) first += 1;
  // On to the top of that first lobe: its lean is the tool's, whatever bounces follow.
  const sign = samples[first]! < 0 ? -1 : 1;
  let top = first;
  for (let n = first; n <= to && sign * samples[n]! > 0; n += 1) if (sign * samples[n]! > sign * samples[top]!) top = n;
  return {
    at: top / TAP_RATE_HZ,
    sign,
    size,
    lean: leanAt(samples, top),
    sharpness,
    isClipped: topIn(tops, from - 3, to + 3) >= FULL_SCALE,
  };
}

/** Every swing that stands out of the noise, contacts' clicks left out. @param samples without hum */
export function findSwings(samples: Float64Array, signal: TapSignal, floor: Float64Array): Swing[] {
  return spansAbove(samples, floor).flatMap((span) => swingIn(samples, signal, span) ?? []);
}
