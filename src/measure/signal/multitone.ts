/** Tones are whole multiples of 1 Hz, so that the sum repeats every second. */
export const PERIOD_SECONDS = 1;
const FROM_HZ = 20;
const TO_HZ = 20_000;
const PER_OCTAVE = 16;

function tones(): number[] {
  const count = Math.floor(PER_OCTAVE * Math.log2(TO_HZ / FROM_HZ));
  const asked = Array.from({ length: count + 1 }, (_, k) => Math.round(FROM_HZ * 2 ** (k / PER_OCTAVE)));
  return [...new Set(asked)];
}

/** Hz, rising. */
export const TONES_HZ: readonly number[] = tones();

/** Quadratic phases keep the sum's peak low (D. J. Newman, An L1 extremal problem for polynomials, 1965). */
const PHASES = TONES_HZ.map((_, k) => (Math.PI * k * k) / TONES_HZ.length);

/** One period of the sum with tones of amplitude 1, by the angle of each at every sample. */
function period(sampleRateHz: number): Float64Array {
  const samples = new Float64Array(sampleRateHz * PERIOD_SECONDS);
  for (const [k, hz] of TONES_HZ.entries()) {
    const step = (2 * Math.PI * hz) / sampleRateHz;
    for (let n = 0; n < samples.length; n += 1) samples[n]! += Math.sin(step * n + PHASES[k]!);
  }
  return samples;
}

const PROBE_RATE_HZ = 48_000;
/** Between two probes the sum may stand a little higher. */
const PEAK_GUARD = 1.05;

let amplitude: number | undefined;

/** Of each tone, for a sum of peak 1 at most. */
export function toneAmplitude(): number {
  amplitude ??= 1 / (PEAK_GUARD * period(PROBE_RATE_HZ).reduce((top, each) => Math.max(top, Math.abs(each)), 0));
  return amplitude;
}

/** The angle of the kth tone at the start, radians. */
export const tonePhase = (k: number): number => PHASES[k]!;

/**
 * The sum at the samples of a whole period, peak 1 at most; it repeats.
 * @param sampleRateHz a whole number
 */
export function multitonePeriod(sampleRateHz: number): Float64Array {
  return period(sampleRateHz).map((each) => each * toneAmplitude());
}
