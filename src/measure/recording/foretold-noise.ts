import { type Body, TAIL_SECONDS } from "../signal/layout.ts";
import { bodyPeak, type SignalKind } from "../signal/measuring-signal.ts";
import { toneAmplitude } from "../signal/multitone.ts";
import { sweepPower } from "../signal/sweep.ts";
import { projection } from "./projection.ts";
import { gateEnergySeconds } from "./sweep-transfer.ts";
import { SETTLED_SECONDS } from "./tone-transfer.ts";

/** Under a Hann window, and the window's own square. */
function windowed(samples: Float32Array) {
  const window = (n: number) => 1 - Math.cos((2 * Math.PI * (n + 0.5)) / samples.length);
  // Of 1 − cos the square comes to 3/2 in the mean.
  return { values: Float64Array.from(samples, (each, n) => window(n) * each), square: 1.5 * samples.length };
}

/** The variance that white noise of variance 1 gives the real or imaginary part of a transfer from one pass. */
const VARIANCES: Readonly<Record<SignalKind, (body: Body, sampleRateHz: number, hz: number) => number>> = {
  // A gate keeps of the deconvolved noise, spread evenly over the pass, what falls into its time.
  sweep: (body, sampleRateHz, hz) => {
    const share = gateEnergySeconds() / (body.seconds + TAIL_SECONDS);
    const heard = (body.seconds + TAIL_SECONDS) * sampleRateHz;
    return (share * heard) / (2 * bodyPeak(body) ** 2 * sweepPower(hz, body.seconds) * sampleRateHz ** 2);
  },
  // Of the sum of 1 − cos over n samples the squares come to 3n/2.
  multitone: (body, sampleRateHz) => {
    const heard = (body.seconds - SETTLED_SECONDS) * sampleRateHz;
    return 3 / (heard * (bodyPeak(body) * toneAmplitude()) ** 2);
  },
};

/** The standard error that what is heard in the quiet stretch gives a transfer's real or imaginary part, from one pass, at frequencies in Hz. */
export function foretoldNoise(
  kind: SignalKind,
  body: Body,
  quiet: Float32Array,
  sampleRateHz: number,
): (frequenciesHz: Float64Array) => Float64Array {
  const { values, square } = windowed(quiet);
  return (frequenciesHz) =>
    frequenciesHz.map((hz) => {
      const { onCosine, onSine } = projection(values, (2 * Math.PI * hz) / sampleRateHz);
      // White noise of this variance has a spectrum as high at this frequency.
      const variance = (onCosine ** 2 + onSine ** 2) / square;
      return Math.sqrt(VARIANCES[kind](body, sampleRateHz, hz) * variance);
    });
}
