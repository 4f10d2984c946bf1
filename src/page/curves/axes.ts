import type { RawSettings, SettingValue } from "../../build-file/settings.ts";
import type { FamilyAxis } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { Reading } from "../state/reading.ts";

type Controlled = Pick<Reading, "controls">;

const DIALS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** The key to vary for an axis, and its values; undefined where the build has no such control. */
export function axisOf(reading: Controlled, axis: FamilyAxis): { key: string; values: readonly number[] } | undefined {
  const { controls } = reading;
  if (axis === "position" && controls.main) {
    const positions = controls.main.table.positions.map((_, index) => index + 1);
    return { key: controls.main.name, values: positions };
  }
  if ((axis === "tone" || axis === "volume") && controls.potsWithRole(axis).length > 0)
    // At 0 the volume is silent and has no curve worth drawing.
    return { key: axis, values: axis === "volume" ? DIALS.slice(1) : DIALS };
  return undefined;
}

export function moved(reading: Controlled, settings: RawSettings, key: string, value: SettingValue): RawSettings {
  return fitSettings(reading, { ...settings, [key]: value });
}

export function settingsAlong(reading: Controlled, settings: RawSettings, axis: FamilyAxis): RawSettings[] {
  const along = axisOf(reading, axis);
  return along ? along.values.map((value) => moved(reading, settings, along.key, value)) : [];
}
