import type { RawSettings } from "../../build-file/settings.ts";
import { getBytes } from "../server/client.ts";
import { codeOf } from "../share/link-code.ts";
import type { Reading } from "../state/reading.ts";

async function address(reading: Reading, settings: RawSettings, rateHz: number): Promise<string> {
  const query = new URLSearchParams({ build: await codeOf(reading), rate: String(rateHz) });
  for (const [name, value] of Object.entries(settings)) query.set(name, String(value));
  return `/api/impulse.wav?${query}`;
}

/** The filter of a setting at the context's own rate, so that decoding leaves its samples as they are. */
export async function fetchImpulse(
  context: BaseAudioContext,
  reading: Reading,
  settings: RawSettings,
): Promise<AudioBuffer> {
  return context.decodeAudioData(await getBytes(await address(reading, settings, context.sampleRate)));
}
