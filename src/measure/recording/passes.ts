import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { BODIES } from "../signal/layout.ts";
import { bodyPeak } from "../signal/measuring-signal.ts";

/** A transfer with the standard error of its real and of its imaginary part. */
export interface Transfer extends Spectrum {
  readonly frequenciesHz: Float64Array;
  readonly sd: Float64Array;
}

/** A transfer as one pass gave it; hiss weighs the more the more quietly it was played. */
export interface Pass extends Spectrum {
  readonly index: number;
}

const weightOf = ({ index }: Pass) => bodyPeak(BODIES[index]!) ** 2;

function mean(passes: readonly Pass[], part: "re" | "im"): Float64Array {
  const whole = passes.reduce((sum, pass) => sum + weightOf(pass), 0);
  return passes[0]![part].map((_, i) => passes.reduce((sum, pass) => sum + weightOf(pass) * pass[part][i]!, 0) / whole);
}

/** Neighbours on either side that a scatter is averaged over: few passes tell little of one frequency. */
const NEIGHBOURS = 4;

export function smoothed(values: Float64Array): Float64Array {
  return values.map((_, i) => {
    const near = values.subarray(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1);
    return near.reduce((sum, each) => sum + each, 0) / near.length;
  });
}

/** The variance of the mean's real or imaginary part, as the passes scatter about it. */
function scatter(passes: readonly Pass[], { re, im }: Spectrum): Float64Array {
  const whole = passes.reduce((sum, pass) => sum + weightOf(pass), 0);
  const squares = re.map((_, i) =>
    passes.reduce((sum, pass) => sum + weightOf(pass) * ((pass.re[i]! - re[i]!) ** 2 + (pass.im[i]! - im[i]!) ** 2), 0),
  );
  return smoothed(squares).map((square) => square / (2 * (passes.length - 1) * whole));
}

/**
 * The mean of the passes, each by the power it was played with.
 * @param noise standard error that the quiet stretch foretells of the mean; what the passes' own scatter does not fall under
 */
export function meanOf(passes: readonly Pass[], frequenciesHz: Float64Array, noise: Float64Array): Transfer {
  const middle = { re: mean(passes, "re"), im: mean(passes, "im") };
  const own = passes.length > 1 ? scatter(passes, middle) : noise.map(() => 0);
  return { frequenciesHz, ...middle, sd: own.map((variance, i) => Math.sqrt(Math.max(variance, noise[i]! ** 2))) };
}

/** What each frequency counts for: where hum stands in it, next to nothing; the others alike. */
function clarity(noise: Float64Array): Float64Array {
  const usual = noise.toSorted()[Math.floor(noise.length / 2)]!;
  return noise.map((each) => (each > usual ? (usual / each) ** 2 : 1));
}

/**
 * Seconds by which a pass comes later than another, from their angles' difference, each frequency by its level and its
 * clarity: half a nanosecond that hum makes of it turns every angle the same way, and no scatter shows it.
 */
function lateness(pass: Pass, other: Pass, frequenciesHz: Float64Array, weights: Float64Array): number {
  let [moment, whole] = [0, 0];
  for (const [i, hz] of frequenciesHz.entries()) {
    const re = pass.re[i]! * other.re[i]! + pass.im[i]! * other.im[i]!;
    const im = pass.im[i]! * other.re[i]! - pass.re[i]! * other.im[i]!;
    moment -= weights[i]! * hz * im;
    whole += weights[i]! * hz * hz * re;
  }
  return moment / (2 * Math.PI * whole);
}

/**
 * Every pass moved to the time of the first: marks are found to a hundredth of a sample, which turns the highest tones by a
 * degree.
 * @param noise that the quiet stretch foretells of each frequency
 */
export function aligned(passes: readonly Pass[], frequenciesHz: Float64Array, noise: Float64Array): Pass[] {
  const weights = clarity(noise);
  return passes.map((pass) => {
    const turn = 2 * Math.PI * lateness(pass, passes[0]!, frequenciesHz, weights);
    const [cos, sin] = [frequenciesHz.map((hz) => Math.cos(turn * hz)), frequenciesHz.map((hz) => Math.sin(turn * hz))];
    const re = pass.re.map((each, i) => each * cos[i]! - pass.im[i]! * sin[i]!);
    const im = pass.re.map((each, i) => each * sin[i]! + pass.im[i]! * cos[i]!);
    return { ...pass, re, im };
  });
}

/** What the quiet stretch foretells of a pass, where it does of the loudest. */
const noiseIn = ({ index }: Pass) => bodyPeak(BODIES[0]!) / bodyPeak(BODIES[index]!);

/** A pass tells its gain where it stands so far above noise, if it does for so many of its frequencies: fewer may be hum's own. */
const TELLING_RATIO = 10;
const TELLING_SHARE = 0.25;

/** A level's change between passes, decibels. */
export interface Moved {
  readonly decibels: number;
  readonly standardError: number;
}

const middleOf = (values: readonly number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** The median of normal values scatters by this much more than their mean. */
const MEDIAN_SCATTER = Math.sqrt(Math.PI / 2);
/** Hum lies over neighbouring frequencies alike: half of them count. */
const INDEPENDENT_SHARE = 0.5;

/**
 * By how many decibels the loudest pass came back other than the quietest, over what was played; the median over the frequencies where
 * the quietest should stand above noise, and 0 where it hardly does: behind a short there is nothing to tell a gain by. They are
 * chosen by the loudest: those where noise happens to lift the quietest would tell of a gain that moved.
 * @param noise standard error that the quiet stretch foretells of the loudest pass
 */
export function gainMoved(passes: readonly Pass[], noise: Float64Array): Moved {
  const [first, last] = [passes[0]!, passes.at(-1)!];
  const [own, least] = [noiseIn(last), TELLING_RATIO * noiseIn(last)];
  const telling = Array.from(first.re.keys()).flatMap((i) => {
    const [loud, quiet] = [Math.hypot(first.re[i]!, first.im[i]!), Math.hypot(last.re[i]!, last.im[i]!)];
    if (loud <= least * noise[i]!) return [];
    return [{ decibels: 20 * Math.log10(Math.max(Number.MIN_VALUE, quiet) / loud), off: (own * noise[i]!) / loud }];
  });
  if (telling.length < TELLING_SHARE * first.re.length) return { decibels: 0, standardError: 0 };
  const off = middleOf(telling.map((each) => each.off)) / NEPERS_OF_AMPLITUDE_PER_DB;
  return {
    decibels: middleOf(telling.map(({ decibels }) => decibels)),
    standardError: (MEDIAN_SCATTER * off) / Math.sqrt(INDEPENDENT_SHARE * telling.length),
  };
}

/** Passes are told apart by more than their own scatter, and by more than an ear or a fit would mind. */
const BENT_DECIBELS = 0.1;
const BENT_DEVIATIONS = 6;
/** Below, mains hum and its window's skirts stand in every pass alike. */
const BENT_FROM_HZ = 200;

/** Whether a louder pass came back lower than a quieter one somewhere: an input that rounds its peaks before it clips. */
export function isBent(louder: Pass, quieter: Pass, frequenciesHz: Float64Array, noise: Float64Array): boolean {
  const ownNoise = noiseIn(quieter);
  const drops = louder.re.map((_, i) => {
    const [loud, quiet] = [Math.hypot(louder.re[i]!, louder.im[i]!), Math.hypot(quieter.re[i]!, quieter.im[i]!)];
    if (frequenciesHz[i]! < BENT_FROM_HZ) return 0;
    return quiet - loud > BENT_DEVIATIONS * ownNoise * noise[i]! ? 20 * Math.log10(quiet / loud) : 0;
  });
  return Math.max(...smoothed(drops)) > BENT_DECIBELS;
}
