import { encodeWav } from "../../src/audio/wav-encode.ts";
import type { Build } from "../../src/build-file/schema.ts";
import type { Settings } from "../../src/build-file/settings.ts";
import type { Placement } from "../../src/examine/takes/take.ts";
import { recorded } from "../measure/simulated-recording.ts";
import { type Exciter, heardOf } from "./simulated-exciter.ts";
import { type Bench, type Random, sharesOf } from "./simulated-guard.ts";

const POINTS = 900;
const FROM_HZ = 5;
const TO_HZ = 24_000;
const GRID = Float64Array.from({ length: POINTS }, (_, k) => FROM_HZ * (TO_HZ / FROM_HZ) ** (k / (POINTS - 1)));

/** A curve over the grid as a transfer at any frequency, straight between its points. */
export function transferOf({ re, im }: { re: Float64Array; im: Float64Array }) {
  const step = Math.log(TO_HZ / FROM_HZ) / (POINTS - 1);
  return (hz: number): readonly [number, number] => {
    const place = Math.min(POINTS - 1.001, Math.max(0, Math.log(Math.max(hz, FROM_HZ) / FROM_HZ) / step));
    const below = Math.floor(place);
    const share = place - below;
    return [re[below]! + share * (re[below + 1]! - re[below]!), im[below]! + share * (im[below + 1]! - im[below]!)];
  };
}

const WORLD = { gain: 0.7, noise: 2e-5, bits: 24 } as const;

/** A stereo file: what is played, and what reaches the jack of a coil laid over one of the guard's. */
export function exciterRecording(
  signal: Float32Array,
  rateHz: number,
  guard: Build,
  settings: Settings,
  placement: Placement,
  exciter: Exciter,
  bench: Bench,
  random: Random,
): Uint8Array {
  const transfer = transferOf(heardOf(guard, settings, placement, exciter, GRID, { ...bench, noise: 0 }, random));
  const played = recorded(signal, rateHz, { ...WORLD, driftPpm: 0, seed: 5 });
  const heard = recorded(signal, rateHz, { ...WORLD, transfer, hum: { hz: 50, peak: 1e-4 }, seed: 6 });
  return encodeWav({ sampleRateHz: rateHz, channels: [played, heard] }, "pcm24");
}

/** A stereo file: what is played, and what stands at the jack behind the resistor. */
export function jackRecording(
  signal: Float32Array,
  rateHz: number,
  guard: Build,
  settings: Settings,
  bench: Bench,
  random: Random,
): Uint8Array {
  const transfer = transferOf(sharesOf(guard, settings, GRID, { ...bench, noise: 0 }, random));
  const hum = { hz: 50, peak: 2e-4 };
  const before = recorded(signal, rateHz, { ...WORLD, driftPpm: 0, seed: 3 });
  const behind = recorded(signal, rateHz, { ...WORLD, transfer, hum, seed: 4 });
  return encodeWav({ sampleRateHz: rateHz, channels: [before, behind] }, "pcm24");
}
