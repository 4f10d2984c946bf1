import { createRandom } from "./random.ts";
import type { Sound } from "./sound.ts";

export const TEST_SIGNALS = ["sweep", "noise", "click"] as const;
export type TestSignalName = (typeof TEST_SIGNALS)[number];

/** 12 dB under full scale: a coil's resonance may lift it by that much before it clips. */
export const TEST_SIGNAL_PEAK = 0.25;

const SWEEP_SECONDS = 10;
const SWEEP_FROM_HZ = 10;
/** Of the sample rate: above 18 kHz at 44.1 kHz and just below Nyquist. */
const SWEEP_TO_FRACTION = 0.48;
/** At 0.9 s an octave the fades stay below 11 Hz and above the top 1 %. */
const SWEEP_FADE_IN_SECONDS = 0.1;
const SWEEP_FADE_OUT_SECONDS = 0.01;
const NOISE_SECONDS = 5;
const NOISE_SEED = 0x9e3779b9;
const CLICK_SECONDS = 1;
/** The click is not the first sample, so that anything before its cause would be heard and seen. */
const CLICK_AT_SECONDS = 0.01;

export const TEST_SIGNAL_SECONDS: Readonly<Record<TestSignalName, number>> = {
  sweep: SWEEP_SECONDS,
  noise: NOISE_SECONDS,
  click: CLICK_SECONDS,
};

const MAKERS: Readonly<Record<TestSignalName, (sampleRateHz: number) => Float32Array>> = { sweep, noise, click };

/** A dry mono test signal, peak ±TEST_SIGNAL_PEAK; the same every time. */
export function testSignal(name: TestSignalName, sampleRateHz: number): Sound {
  return { sampleRateHz, channels: [MAKERS[name](sampleRateHz)] };
}

/** Exponential sine sweep (Farina, Simultaneous Measurement of Impulse Response and Distortion, AES 108, 2000), 10 Hz to 0.48 of the rate. */
function sweep(sampleRateHz: number): Float32Array {
  const frames = Math.round(SWEEP_SECONDS * sampleRateHz);
  const octaves = Math.log((SWEEP_TO_FRACTION * sampleRateHz) / SWEEP_FROM_HZ);
  const scale = (2 * Math.PI * SWEEP_FROM_HZ * SWEEP_SECONDS) / octaves;
  return Float32Array.from({ length: frames }, (_, n) => {
    const phase = scale * Math.expm1((octaves * n) / frames);
    const fadeIn = halfCosine(n / (SWEEP_FADE_IN_SECONDS * sampleRateHz));
    const fadeOut = halfCosine((frames - 1 - n) / (SWEEP_FADE_OUT_SECONDS * sampleRateHz));
    return TEST_SIGNAL_PEAK * fadeIn * fadeOut * Math.sin(phase);
  });
}

/** Flat (white) noise, evenly spread over ±peak. */
function noise(sampleRateHz: number): Float32Array {
  const random = createRandom(NOISE_SEED);
  return Float32Array.from(
    { length: Math.round(NOISE_SECONDS * sampleRateHz) },
    () => TEST_SIGNAL_PEAK * (random() / 2 ** 31 - 1),
  );
}

function click(sampleRateHz: number): Float32Array {
  const samples = new Float32Array(Math.round(CLICK_SECONDS * sampleRateHz));
  samples[Math.round(CLICK_AT_SECONDS * sampleRateHz)] = TEST_SIGNAL_PEAK;
  return samples;
}

function halfCosine(position: number): number {
  return position >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, position));
}
