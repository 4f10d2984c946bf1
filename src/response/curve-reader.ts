import type { Build } from "../build-file/schema.ts";
import { type SettingSummary, summarize } from "../build-file/setting-label.ts";
import { Controls, rawSettings, type Settings, type SettingValue } from "../build-file/settings.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { stringWeight } from "../strings/comb.ts";
import { soundingString } from "../strings/string-set.ts";
import { coilPlaces, stringSetOf } from "./coil-places.ts";
import { curveOf, type SourceCurve } from "./curve.ts";
import { ResponseEngine } from "./engine.ts";
import { heardThrough, type Weight } from "./heard-transfers.ts";
import { humLevelDb } from "./hum.ts";
import { ActivityReader } from "./labels/activity.ts";
import { SettingDescriber } from "./labels/setting-describer.ts";

export interface CurvesRequest {
  readonly build: Build;
  readonly settings: readonly Settings[];
  readonly frequenciesHz: Float64Array;
  readonly withSources: boolean;
  /** As this string is heard at this fret: each coil's comb and aperture multiplied into its transfer. */
  readonly heard?: { readonly string: number; readonly fret: number } | undefined;
}

export interface SettingCurve extends SettingSummary {
  /** The state of the controls: "position 2, tone 7, volume 10". */
  readonly setting: string;
  /** What sounds there, computed from the wiring: "bridge + middle, parallel, in phase, hum cancelling". */
  readonly label: string;
  /** Net hum in dB re one reference coil. */
  readonly hum: number;
  /** Controls that have any effect there. */
  readonly active: readonly string[];
  readonly settings: Readonly<Record<string, SettingValue>>;
  /** dB, degrees. */
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  readonly cutoff: number | null;
  readonly sources?: readonly SourceCurve[];
}

/** The string's weight at each coil, sign and size left to the source's EMF. */
function weightsOf(build: Build, engine: ResponseEngine, string: number, fret: number): Weight[] {
  const sounding = soundingString(stringSetOf(build), string, fret);
  return coilPlaces(build, engine.sources).map((place) => {
    const bare = { ...place, sign: 1, output: 1 } as const;
    return (frequencyHz) => stringWeight(sounding, bare, frequencyHz);
  });
}

/** What is asked of a build, without the build. */
export type CurvesQuestion = Omit<CurvesRequest, "build">;

/** Computes the curves of one build, question after question, remembering what the questions have in common. */
export class CurveReader {
  readonly build: Build;
  readonly controls: Controls;
  readonly #engine: ResponseEngine;
  readonly #describer: SettingDescriber;
  readonly #activity: ActivityReader;

  constructor(build: Build, engine = new ResponseEngine(build)) {
    this.build = build;
    this.controls = new Controls(build);
    this.#engine = engine;
    this.#describer = new SettingDescriber(build);
    this.#activity = new ActivityReader(build, (settings) => engine.transfersIn(settings));
  }

  /**
   * The curve of every setting, in order.
   * @throws PresolderError REQUEST_INVALID for a string or fret that the build's strings do not have
   */
  curvesOf(question: CurvesQuestion, { checkpoint }: Checkpoint): SettingCurve[] {
    const { frequenciesHz, heard, withSources } = question;
    const engine = this.#engine;
    const weights = heard && weightsOf(this.build, engine, heard.string, heard.fret);
    engine.plan(question.settings);
    return question.settings.map((settings) => {
      checkpoint();
      const plain = engine.transfersIn(settings);
      const transfers = weights ? heardThrough(plain, weights) : plain;
      const { label: setting, ...summary } = summarize(this.controls, settings);
      return {
        settings: rawSettings(this.controls, settings),
        setting,
        ...summary,
        label: this.#describer.describe(settings).label,
        hum: humLevelDb(plain),
        active: this.#activity.activeIn(settings),
        ...curveOf(transfers, frequenciesHz, { withSources, checkpoint }),
      };
    });
  }
}

/** As `CurveReader.curvesOf`, for one question. */
export function curvesOf(request: CurvesRequest, work: Checkpoint): SettingCurve[] {
  return new CurveReader(request.build).curvesOf(request, work);
}
