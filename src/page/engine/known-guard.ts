import { BoundedMap } from "../../bounded-map.ts";
import { parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { type Curve, curveOf, magnitudeOf } from "../../response/curve.ts";
import { ResponseEngine } from "../../response/engine.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { FREQUENCIES_HZ } from "../curves/frequencies.ts";
import { type LivePath, LivePathFinder } from "../drawing/live-path.ts";
import type { Reading } from "../state/reading.ts";

/** A whole family for every position of a large switch fits; older curves make way. */
const MAX_CURVES = 600;

type DrawnCurve = Pick<Curve, "magnitude" | "peak" | "cutoff">;

/** A guard that is asked about again and again, with what was worked out for it. */
export class KnownGuard {
  readonly reading: Reading;
  readonly #engine: ResponseEngine;
  readonly #describer: SettingDescriber;
  readonly #paths: LivePathFinder;
  readonly #curves = new BoundedMap<string, DrawnCurve>(MAX_CURVES);
  readonly #magnitudes = new BoundedMap<string, Float64Array>(MAX_CURVES);

  constructor(reading: Reading) {
    const { build } = reading;
    this.reading = reading;
    // Knobs are turned: every switch position is asked for again.
    this.#engine = new ResponseEngine(build, { isKept: true });
    this.#describer = new SettingDescriber(build);
    this.#paths = new LivePathFinder(build, this.#describer);
  }

  /** The curve in one setting; asked again, it is not computed again. */
  curveIn(settings: RawSettings): DrawnCurve {
    const key = JSON.stringify(settings);
    const known = this.#curves.get(key);
    if (known) return known;
    const transfers = this.#engine.transfersIn(this.#parse(settings));
    const { magnitude, peak, cutoff } = curveOf(transfers, FREQUENCIES_HZ);
    const curve = { magnitude, peak, cutoff };
    this.#curves.set(key, curve);
    return curve;
  }

  /** The level alone, in dB: of curves behind no more is told. */
  magnitudeIn(settings: RawSettings): Float64Array {
    const key = JSON.stringify(settings);
    const known = this.#curves.get(key)?.magnitude ?? this.#magnitudes.get(key);
    if (known) return known;
    const magnitude = magnitudeOf(this.#engine.transfersIn(this.#parse(settings)), FREQUENCIES_HZ);
    this.#magnitudes.set(key, magnitude);
    return magnitude;
  }

  /** What sounds: "bridge + middle, parallel, in phase, hum cancelling". */
  labelIn(settings: RawSettings): string {
    return this.#describer.describe(this.#parse(settings)).label;
  }

  pathIn(settings: RawSettings): LivePath {
    return this.#paths.find(this.#parse(settings));
  }

  #parse(settings: RawSettings) {
    return parseSettings(this.reading.controls, settings);
  }
}
