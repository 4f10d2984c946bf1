import type { Build } from "../../build-file/schema.ts";
import { Controls, parseSettings, type RawSettings, type Settings } from "../../build-file/settings.ts";
import { readBuildAt } from "../../contract/refusal.ts";
import { faultAt } from "../../errors.ts";
import { decodeLink } from "../links/link-code.ts";

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
