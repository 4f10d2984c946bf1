import { parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { type Curve, curveOf } from "../../response/curve.ts";
import { logSpaced } from "../../response/frequencies.ts";
import type { Reading } from "../state/reading.ts";

/** 32 points an octave: a resonance of the sharpest unloaded coil still looks round. */
export const FREQUENCIES_HZ = logSpaced(20, 20_000, 320);

/** A whole family for every position of a large switch fits; older curves make way. */
const MAX_CURVES = 600;
const cache = new WeakMap<Reading, Map<string, Curve>>();

/** The curve of a build in one setting; asked again, it is not computed again. */
export function curveIn(reading: Reading, settings: RawSettings): Curve {
  const curves = cache.get(reading) ?? new Map<string, Curve>();
  cache.set(reading, curves);
  const key = JSON.stringify(settings);
  const known = curves.get(key);
  if (known) return known;
  const curve = curveOf(reading.engine.transfersIn(parseSettings(reading.controls, settings)), FREQUENCIES_HZ);
  if (curves.size >= MAX_CURVES) curves.clear();
  curves.set(key, curve);
  return curve;
}
