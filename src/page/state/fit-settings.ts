import { type Controls, parseSettings, type RawSettings, rawSettings, withControl } from "../../build-file/settings.ts";

/** Settings that fit a build: those of the old ones that its controls still know, the rest at rest. */
export function fitSettings({ controls }: { readonly controls: Controls }, wanted: RawSettings): RawSettings {
  let settings = parseSettings(controls);
  for (const [name, value] of Object.entries(wanted)) {
    try {
      settings = withControl(controls, settings, name, value);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return rawSettings(controls, settings);
}
