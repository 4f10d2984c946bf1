import { z } from "zod";
import type { Build } from "../../build-file/schema.ts";
import { Controls, parseSettings, type RawSettings, type Settings } from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";
import { MAX_LINK_CODE_CHARS, MAX_SAMPLE_RATE_HZ, MIN_SAMPLE_RATE_HZ } from "../../limits.ts";
import { decodeLink } from "../links/link-code.ts";
import { readBuildAt } from "./validation.ts";

export const codeField = z
  .string({ error: () => "is missing; expected a link code, as POST /api/link gives it" })
  .min(1)
  .max(MAX_LINK_CODE_CHARS)
  .describe("link code of the build");

export const rateInAddress = z
  .string()
  .regex(/^\d{1,6}$/, "expected a whole number of Hz")
  .transform(Number)
  .pipe(z.number().min(MIN_SAMPLE_RATE_HZ).max(MAX_SAMPLE_RATE_HZ))
  .describe("sample rate in Hz");

/** A query whose other keys are settings, by control or role. */
export function addressQuery<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const value = z.string({ error: () => "is given more than once" }).max(40);
  return z.object(shape).catchall(value).describe("every other key is a control or a role, as in lever=2&tone=7");
}

/** The keys of a query that are settings. With a prefix, those that begin with it, the prefix taken off. */
export function settingsInAddress(
  query: Readonly<Record<string, unknown>>,
  known: readonly string[],
  prefix = "",
): RawSettings {
  const entries = Object.entries(query).filter(([key]) => !known.includes(key) && key.startsWith(prefix));
  return Object.fromEntries(entries.map(([key, value]) => [key.slice(prefix.length), value as string]));
}

export interface BuildInSetting {
  readonly build: Build;
  readonly settings: Settings;
}

/** @throws PresolderError LINK_INVALID, BUILD_INVALID or SETTINGS_INVALID, its paths under the query's own keys */
export function readCoded(path: string, code: string, raw: RawSettings, settingsPath: string): BuildInSetting {
  const build = readBuildAt(path, decodeLink(code, path).build);
  return { build, settings: parseSettings(new Controls(build), raw, settingsPath) };
}

/** Refuses keys that only make sense beside another. */
export function requireWith(path: string, condition: boolean, message: string): void {
  if (!condition) throw faultAt("REQUEST_INVALID", path, message);
}
