import type { HumLine, Phasor } from "./hum-at-jack.ts";

/** Long enough that its coming and going is no click. */
const RAMP_SECONDS = 0.01;

/**
 * Volts at a frequency as one phasor: the wires' pick-up a quarter of a turn from what the magnetic field gives, so that they add
 * by power, as for any phase between the two fields on average.
 */
function phasorOf({ coils, loops, runs }: HumLine): Phasor {
  const [re, im] = [coils[0] + loops[0], coils[1] + loops[1]];
  const size = Math.hypot(re, im);
  const driven = Math.hypot(...runs);
  if (size === 0) return [driven, 0];
  return [re - (im / size) * driven, im + (re / size) * driven];
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** One or more whole periods of a fundamental, in samples, after which the same values come again. */
export function periodOf(mainsHz: number, sampleRateHz: number): number {
  return sampleRateHz / greatestCommonDivisor(sampleRateHz, mainsHz);
}

/** Hum in volts over one such period. @param lines harmonics of one fundamental, in volts RMS */
export function humPeriod(lines: readonly HumLine[], sampleRateHz: number): Float64Array {
  const period = new Float64Array(periodOf(lines[0]!.hz, sampleRateHz));
  for (const line of lines) {
    if (line.hz >= sampleRateHz / 2) continue;
    const [re, im] = phasorOf(line);
    const step = (2 * Math.PI * line.hz) / sampleRateHz;
    for (let n = 0; n < period.length; n++)
      period[n]! += Math.SQRT2 * (re * Math.cos(step * n) - im * Math.sin(step * n));
  }
  return period;
}

/** Adds what comes again and again to samples, let in and out. */
export function addRepeated(samples: Float32Array, period: ArrayLike<number>, sampleRateHz: number): void {
  const ramp = Math.min(Math.round(RAMP_SECONDS * sampleRateHz), samples.length >> 1);
  for (let n = 0, at = 0; n < samples.length; n++, at = at + 1 === period.length ? 0 : at + 1) {
    const fromEdge = Math.min(n, samples.length - 1 - n);
    const gain = fromEdge >= ramp ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * fromEdge) / ramp);
    samples[n]! += gain * period[at]!;
  }
}
