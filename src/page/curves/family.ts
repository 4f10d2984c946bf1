import type { RawSettings, SettingValue } from "../../build-file/settings.ts";
import type { Curve } from "../../response/curve.ts";
import type { AppState, FamilyAxis } from "../state/app-state.ts";
import { fitSettings } from "../state/editor.ts";
import type { Reading } from "../state/reading.ts";
import { curveIn } from "./curve-cache.ts";

export interface Trace {
  readonly name: string;
  /** What the build it belongs to is called, where that is another one. */
  readonly title?: string;
  readonly curve: Curve;
  /** 0 … 1 along the family, for its shade. */
  readonly along: number;
}

export interface Family {
  readonly current: Trace;
  /** The curves behind; the one that coincides with the current setting is among them. */
  readonly behind: readonly Trace[];
}

/** What the curve of the build kept for comparison is called. */
export const OTHER_BUILD = "B";

export function isOtherBuild({ name }: Trace): boolean {
  return name === OTHER_BUILD;
}

const DIALS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** The key to vary for an axis, and its values; undefined where the build has no such control. */
export function axisOf(reading: Reading, axis: FamilyAxis): { key: string; values: readonly number[] } | undefined {
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

function moved(reading: Reading, settings: RawSettings, key: string, value: SettingValue): RawSettings {
  return fitSettings(reading, { ...settings, [key]: value });
}

export function settingsAlong(reading: Reading, settings: RawSettings, axis: FamilyAxis): RawSettings[] {
  const along = axisOf(reading, axis);
  return along ? along.values.map((value) => moved(reading, settings, along.key, value)) : [];
}

function buildTraces(other: Reading | undefined, settings: RawSettings): Trace[] {
  return other
    ? [
        {
          name: OTHER_BUILD,
          title: other.source.title ?? "",
          curve: curveIn(other, fitSettings(other, settings)),
          along: 0.5,
        },
      ]
    : [];
}

/** The current curve and the chosen family behind it. */
export function familyOf(
  reading: Reading,
  { settings, family, other }: Pick<AppState, "settings" | "family" | "other">,
): Family {
  const current = { name: "now", curve: curveIn(reading, settings), along: 1 };
  if (family === "builds") return { current, behind: buildTraces(other, settings) };
  const along = axisOf(reading, family);
  const behind = (along?.values ?? []).map((value, index, values) => ({
    name: `${family} ${value}`,
    curve: curveIn(reading, moved(reading, settings, along!.key, value)),
    along: values.length > 1 ? index / (values.length - 1) : 0,
  }));
  return { current, behind };
}
