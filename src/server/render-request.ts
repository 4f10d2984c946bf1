import { z } from "zod";
import { ENCODINGS } from "../audio/wav-encode.ts";
import { Controls, parseSettings } from "../build-file/settings.ts";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { buildField, settingsField } from "../contract/fields.ts";
import { faultAt } from "../errors.ts";
import { MAX_SAMPLE_RATE_HZ, MIN_SAMPLE_RATE_HZ } from "../limits.ts";
import type { SignalSource } from "../render/feed.ts";
import { LEVELS } from "../render/levels.ts";
import type { RenderRequest } from "../render/renderer.ts";
import { DEFAULT_SAMPLE_RATE_HZ, DEFAULT_SIGNAL, SIGNAL_NAMES } from "../render/signals.ts";
import { readBuildAt } from "./http/validation.ts";

/** What every request for rendered sound may say beside its settings. */
export const renderFields = {
  build: buildField,
  signal: oneOf(SIGNAL_NAMES)
    .optional()
    .describe(`a built-in signal, default ${DEFAULT_SIGNAL}; left out where a file is sent`),
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
    .describe("the room's hum in every coil"),
};

export const recordedWithField = strict({
  build: buildField,
  settings: settingsField.default({}),
}).describe("the circuit the recording has already been through, to be divided out (files only)");

type RenderBody = z.output<z.ZodObject<typeof renderFields>> & {
  recordedWith?: z.output<typeof recordedWithField> | undefined;
};

function signalOf({ signal, rate }: RenderBody, upload: Uint8Array | undefined): SignalSource {
  if (!upload) return { name: signal ?? DEFAULT_SIGNAL, sampleRateHz: rate ?? DEFAULT_SAMPLE_RATE_HZ };
  const given = signal !== undefined ? "signal" : rate !== undefined ? "rate" : undefined;
  if (given === undefined) return { file: upload };
  const message = given === "rate" ? "a file keeps its own rate" : "expected a name or a file, not both";
  throw faultAt("REQUEST_INVALID", given, message);
}

/**
 * Everything of a render request but its settings.
 * @throws PresolderError naming the field at fault
 */
export function readRenderRequest(body: RenderBody, upload: Uint8Array | undefined): RenderRequest {
  const build = readBuildAt("build", body.build);
  const signal = signalOf(body, upload);
  const base = { build, signal, hum: body.hum };
  if (!body.recordedWith) return base;
  if (!upload) {
    const message = "only a recording of one's own, sent as a file, has been through a circuit";
    throw faultAt("REQUEST_INVALID", "recordedWith", message);
  }
  const old = readBuildAt("recordedWith.build", body.recordedWith.build);
  const settings = parseSettings(new Controls(old), body.recordedWith.settings, "recordedWith.settings");
  return { ...base, recordedWith: { build: old, settings } };
}
