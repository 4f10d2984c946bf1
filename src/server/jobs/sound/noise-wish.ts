import type { Build } from "../../../build-file/schema.ts";
import type { AmplifierBody, NoiseField, RoomBody } from "../../../contract/noise-field.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_NOISE_SETTINGS } from "../../../limits.ts";
import { type AmplifierNoise, usualAmplifier } from "../../../listening/noise/amplifier.ts";
import type { NoiseWish } from "../../../listening/noise/noise-maker.ts";
import { type RoomField, USUAL_ROOM } from "../../../listening/noise/room.ts";

export function roomOf(field: RoomBody | undefined): RoomField {
  if (!field) return USUAL_ROOM;
  return { fluxDensity: field.microtesla * 1e-6, electricField: field.voltsPerMetre, harmonics: field.harmonics };
}

export function amplifierOf({ nanovolts, picoamperes }: AmplifierBody = {}, build: Build): AmplifierNoise {
  const usual = usualAmplifier(build);
  return {
    voltage: nanovolts === undefined ? usual.voltage : nanovolts * 1e-9,
    current: picoamperes === undefined ? usual.current : picoamperes * 1e-12,
  };
}

/** @throws PresolderError LIMIT_EXCEEDED for more settings with noise than MAX_NOISE_SETTINGS */
export function expectFewSettings(count: number): void {
  if (count <= MAX_NOISE_SETTINGS) return;
  const message = `asks for the noise of ${count} settings; expected at most ${MAX_NOISE_SETTINGS}`;
  throw faultAt("LIMIT_EXCEEDED", "sweep", message);
}

/** @throws PresolderError where hum is asked for in both ways */
export function noiseWishOf(
  build: Build,
  noise: NoiseField | undefined,
  humInCoils: 50 | 60 | undefined,
): NoiseWish | undefined {
  if (noise && humInCoils !== undefined)
    throw faultAt("REQUEST_INVALID", "hum", "expected `noise` or the older `hum`, not both");
  const usual = { room: roomOf(noise?.field), amplifier: amplifierOf(noise?.amplifier, build) };
  if (humInCoils !== undefined) return { ...usual, mainsHz: humInCoils, isCoilsOnly: true, isHissing: false };
  if (!noise || (noise.hum === "none" && !noise.hiss)) return undefined;
  const mainsHz = noise.hum === "none" ? null : noise.hum === "50" ? 50 : 60;
  return { ...usual, mainsHz, isCoilsOnly: false, isHissing: noise.hiss };
}
