import type { Build } from "../build/schema.ts";
import { type SettingSummary, summarize } from "../build/setting-label.ts";
import { Controls, rawSettings, type Settings, type SettingValue } from "../build/settings.ts";
import { weightedSum } from "../response/curve.ts";
import { curveOf, ResponseEngine, type SourceCurve } from "../response/responses.ts";
import type { Transfers } from "../response/transfers.ts";
import { stringWeight } from "../strings/comb.ts";
import { soundingString } from "../strings/string-set.ts";
import type { Checkpoint } from "./checkpoint.ts";
import { coilPlaces, stringSetOf } from "./coil-places.ts";

export interface CurvesRequest {
  readonly build: Build;
  readonly settings: readonly Settings[];
  readonly frequenciesHz: Float64Array;
  readonly withSources: boolean;
  /** As this string is heard at this fret: each coil's comb and aperture multiplied into its transfer. */
  readonly heard?: { readonly string: number; readonly fret: number } | undefined;
}

export interface SettingCurve extends SettingSummary {
  readonly settings: Readonly<Record<string, SettingValue>>;
  /** dB, degrees. */
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  readonly cutoff: number | null;
  readonly sources?: readonly SourceCurve[];
}

type Weight = (frequencyHz: number) => number;

/** The string's weight at each coil, sign and size left to the source's EMF. */
function weightsOf(build: Build, engine: ResponseEngine, string: number, fret: number): Weight[] {
  const sounding = soundingString(stringSetOf(build), string, fret);
  return coilPlaces(build, engine.sources).map((place) => {
    const bare = { ...place, sign: 1, output: 1 } as const;
    return (frequencyHz) => stringWeight(sounding, bare, frequencyHz);
  });
}

function heardThrough(transfers: Transfers, weights: readonly Weight[]): Transfers {
  const emfs = transfers.sources.map((source) => source.emf);
  const perSource = (frequenciesHz: Float64Array) =>
    transfers.perSource(frequenciesHz).map(({ re, im }, index) => {
      const weight = frequenciesHz.map(weights[index]!);
      return { re: re.map((value, i) => value * weight[i]!), im: im.map((value, i) => value * weight[i]!) };
    });
  const total = (frequenciesHz: Float64Array, emf: readonly number[] = emfs) =>
    weightedSum(perSource(frequenciesHz), emf);
  const power =
    (emf: readonly number[] = emfs) =>
    (frequencyHz: number) => {
      const { re, im } = total(Float64Array.of(frequencyHz), emf);
      return re[0]! ** 2 + im[0]! ** 2;
    };
  return { sources: transfers.sources, perSource, total, power };
}

/**
 * The curve of every setting, in order.
 * @throws PresolderError REQUEST_INVALID for a string or fret that the build's strings do not have
 */
export function curvesOf(request: CurvesRequest, { checkpoint }: Checkpoint): SettingCurve[] {
  const { build, heard } = request;
  const controls = new Controls(build);
  const engine = new ResponseEngine(build);
  const weights = heard && weightsOf(build, engine, heard.string, heard.fret);
  return request.settings.map((settings) => {
    checkpoint();
    const plain = engine.transfersIn(settings);
    const transfers = weights ? heardThrough(plain, weights) : plain;
    return {
      settings: rawSettings(controls, settings),
      ...summarize(controls, settings),
      ...curveOf(transfers, request.frequenciesHz, request.withSources),
    };
  });
}
