import type { RawSettings } from "../../build-file/settings.ts";
import { axisOf, moved } from "../curves/axes.ts";
import { type Family, type FeaturedTrace, OTHER_BUILD } from "../curves/family.ts";
import type { FamilyAxis } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { KnownGuard } from "./known-guard.ts";

function otherTraces(other: KnownGuard | undefined, settings: RawSettings): FeaturedTrace[] {
  if (!other) return [];
  const { reading } = other;
  const curve = other.curveIn(fitSettings(reading, settings));
  return [{ name: OTHER_BUILD, title: reading.source.title ?? "", ...curve, along: 0.5 }];
}

/** The curve of a setting and the chosen family behind it. */
export function familyOf(guard: KnownGuard, settings: RawSettings, axis: FamilyAxis, other?: KnownGuard): Family {
  const current = { name: "now", ...guard.curveIn(settings), along: 1 };
  if (axis === "builds") return { current, behind: otherTraces(other, settings) };
  const along = axisOf(guard.reading, axis);
  const behind = (along?.values ?? []).map((value, index, values) => ({
    name: `${axis} ${value}`,
    magnitude: guard.magnitudeIn(moved(guard.reading, settings, along!.key, value)),
    along: values.length > 1 ? index / (values.length - 1) : 0,
  }));
  return { current, behind };
}
