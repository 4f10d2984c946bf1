import type { Build } from "../../build-file/schema.ts";
import { Controls, parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { USUAL_TEMPERATURE_KELVIN, usualAmplifier } from "../../listening/noise/amplifier.ts";
import { noiseAnswer } from "../../listening/noise/noise-answer.ts";
import { mainPositions, type NoiseTold, noiseTold } from "../../listening/noise/noise-told.ts";
import { type MainsHz, USUAL_ROOM } from "../../listening/noise/room.ts";

export interface NoiseAsked {
  readonly build: Build;
  /** Those of the other controls; every position of the main switch is told. */
  readonly settings: RawSettings;
  readonly mainsHz: MainsHz;
  readonly microtesla: number;
}

export interface NoiseReply extends NoiseTold {
  readonly answer: string;
}

/** As the service answers. */
export function toldOfNoise({ build, settings, mainsHz, microtesla }: NoiseAsked): NoiseReply {
  const told = noiseTold(
    {
      build,
      settings: mainPositions(build, parseSettings(new Controls(build), settings)),
      conditions: {
        mainsHz,
        room: { ...USUAL_ROOM, fluxDensity: microtesla * 1e-6 },
        kelvin: USUAL_TEMPERATURE_KELVIN,
        amplifier: usualAmplifier(build),
      },
    },
    { checkpoint: () => {} },
  );
  return { ...told, answer: noiseAnswer(told) };
}
