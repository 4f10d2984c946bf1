import * as z from "zod";
import { ENCODINGS } from "../audio/wav-encode.ts";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { MAX_SAMPLE_RATE_HZ, MIN_SAMPLE_RATE_HZ } from "../limits.ts";
import { MAX_DRIVE } from "../listening/drive/law.ts";
import { CABINETS, CHAINS } from "../listening/names.ts";
import { LEVELS } from "../render/levels.ts";
import { DEFAULT_SAMPLE_RATE_HZ, DEFAULT_SIGNAL, SIGNAL_NAMES } from "../render/signals.ts";
import { buildField, playingFields, settingsField } from "./fields.ts";
import { noiseField } from "./noise-field.ts";

export const chainField = oneOf(CHAINS)
  .default("none")
  .describe("none: as it comes out of the jack; clean: through a clean amplifier and a 12-inch speaker");

/** Heard after the circuit, and in no curve. */
export const listeningField = strict({
  chain: chainField,
  drive: z
    .number({ error: () => `expected a number from 0 to ${MAX_DRIVE}` })
    .min(0)
    .max(MAX_DRIVE)
    .default(0)
    .describe("how hard the amplifier is driven by the volts at the jack; 0 is linear"),
  cabinet: oneOf(CABINETS)
    .nullish()
    .describe(
      "stated: the speaker that /api/signals states; own: the impulse response in the file `cabinet`; left out or null, own where one is sent",
    ),
}).describe("what is between the jack and the ear; drive and cabinet say nothing where `chain` is none");

/** What every request for rendered sound may say beside its settings. */
export const soundFields = {
  build: buildField,
  signal: oneOf(SIGNAL_NAMES)
    .optional()
    .describe(`a built-in signal, default ${DEFAULT_SIGNAL}; left out where a file is sent`),
  ...playingFields,
  rate: z
    .int()
    .min(MIN_SAMPLE_RATE_HZ)
    .max(MAX_SAMPLE_RATE_HZ)
    .optional()
    .describe(`sample rate of a built-in signal in Hz, default ${DEFAULT_SAMPLE_RATE_HZ}; a file keeps its own`),
  level: oneOf(LEVELS)
    .default("true")
    .describe("true: 1.0 is 1 V, one gain for the whole set; matched: every preview at one loudness"),
  encoding: oneOf(ENCODINGS).default("pcm16"),
  hum: z
    .union([z.literal(50), z.literal(60)], { error: () => "expected 50 or 60, the mains frequency in Hz" })
    .optional()
    .describe("the room's hum in the coils alone, as `noise` has it too"),
  noise: noiseField.optional(),
  listening: listeningField.optional(),
};

export const recordedWithField = strict({
  build: buildField,
  settings: settingsField.default({}),
}).describe("the circuit the recording has already been through, to be divided out (files only)");

export type SoundBody = z.output<z.ZodObject<typeof soundFields>> & {
  recordedWith?: z.output<typeof recordedWithField> | undefined;
};

export const RENDERING =
  "A phrase is played by a `hand` on `strings` of some age, heard by every coil at its own place and goes through that coil's " +
  "own transfer; a test signal or a file drives every coil alike. A stereo file is rendered channel by channel and keeps its " +
  "rate. At level `true` 1.0 is 1 V; integer encodings are lowered by one gain for all only where a peak would pass -1 dBTP. " +
  "At level `matched` every preview has one loudness, -26 LUFS or as much lower as the highest peak of the set needs. " +
  "`listening` puts a clean amplifier and a speaker behind the jack: what it adds is in no curve, and is named in the answer.";

const bytes = z.any().meta({ type: "string", format: "binary" });

export const wavAnswer = {
  description: "A WAV file; gain, loudness, true peak, delay and what it is heard through in `presolder-` headers",
  content: { "audio/wav": { schema: bytes } },
};

export const zipAnswer = {
  description:
    "A ZIP: a WAV a setting, response.csv, response.json and manifest.json with gain, LUFS and true peak of each",
  content: { "application/zip": { schema: bytes } },
};
