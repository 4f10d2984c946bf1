import * as z from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import {
  MAX_HARMONICS,
  MAX_MICROTESLA,
  MAX_NOISE_NANOVOLTS,
  MAX_NOISE_PICOAMPERES,
  MAX_VOLTS_PER_METRE,
} from "../limits.ts";
import { USUAL_MICROTESLA, USUAL_ROOM } from "../listening/noise/room.ts";

export const HUMS = ["50", "60", "none"] as const;

const { electricField, harmonics } = USUAL_ROOM;

export const roomField = strict({
  microtesla: z
    .number()
    .min(0)
    .max(MAX_MICROTESLA)
    .default(USUAL_MICROTESLA)
    .describe(
      "flux density of the mains' fundamental across the guard, RMS; homes have 0.025 to 0.11, gear nearby more",
    ),
  voltsPerMetre: z
    .number()
    .min(0)
    .max(MAX_VOLTS_PER_METRE)
    .default(electricField)
    .describe("electric field of the fundamental, RMS; homes have up to some 20"),
  harmonics: z
    .number()
    .min(0)
    .max(MAX_HARMONICS)
    .default(harmonics)
    .describe("how strong harmonics are beside those of customary rectified mains"),
}).describe("what the room has of the mains");

export const amplifierField = strict({
  nanovolts: z
    .number()
    .min(0)
    .max(MAX_NOISE_NANOVOLTS)
    .optional()
    .describe("nV/√Hz in series; default: a triode of 1.6 mS and the stopper before it, the load's own or 34 kΩ"),
  picoamperes: z
    .number()
    .min(0)
    .max(MAX_NOISE_PICOAMPERES)
    .optional()
    .describe("pA/√Hz across the input; default: a grid current of 1 nA"),
}).describe("the amplifier input's own noise, its resistor to ground left out, which the circuit counts");

/** What of a guitar's noise is to be heard. */
export const noiseField = strict({
  hum: oneOf(HUMS).default("none").describe("mains frequency in Hz of the hum in coils, loops of wire and open wires"),
  hiss: z.boolean().default(false).describe("thermal noise of the loaded circuit and the amplifier input's own"),
  field: roomField.optional(),
  amplifier: amplifierField.optional(),
}).describe("hum and hiss beside the sound, at their true level to the string");

export type NoiseField = z.output<typeof noiseField>;
export type RoomBody = z.output<typeof roomField>;
export type AmplifierBody = z.output<typeof amplifierField>;
