import * as z from "zod";
import { ENCODINGS } from "../../audio/wav-encode.ts";
import { oneOf } from "../../build-file/zod-tools.ts";
import { SIGNAL_KINDS } from "../../measure/signal/measuring-signal.ts";

/** Below 44.1 kHz the signal's highest tones do not fit. */
export const MEASURING_RATES_HZ = [44_100, 48_000, 88_200, 96_000, 176_400, 192_000] as const;

export const kindField = oneOf(SIGNAL_KINDS)
  .default("sweep")
  .describe("sweep: stands above hiss, and shows an input that rounds its peaks; multitone: stands above hum");

export const measuringSignalQuerySchema = z
  .strictObject({
    kind: kindField,
    rate: oneOf(MEASURING_RATES_HZ.map(String) as [string, ...string[]])
      .default("48000")
      .transform(Number)
      .describe("sample rate in Hz: the one that the interface runs at"),
    encoding: oneOf(ENCODINGS).default("pcm24"),
  })
  .describe("the measuring signal");
