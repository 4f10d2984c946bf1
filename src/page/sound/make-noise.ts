import type { Build } from "../../build-file/schema.ts";
import { usualAmplifier } from "../../listening/noise/amplifier.ts";
import { NoiseMaker } from "../../listening/noise/noise-maker.ts";
import { USUAL_ROOM } from "../../listening/noise/room.ts";

/** Hum and hiss of a guard in a usual room, before a usual amplifier. */
export function makeNoise(build: Build, noise: "50" | "60", sampleRateHz: number): NoiseMaker {
  const wish = {
    mainsHz: noise === "50" ? 50 : 60,
    isCoilsOnly: false,
    isHissing: true,
    room: USUAL_ROOM,
    amplifier: usualAmplifier(build),
  } as const;
  return new NoiseMaker(build, wish, sampleRateHz);
}
