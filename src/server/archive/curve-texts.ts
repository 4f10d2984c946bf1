import type { Checkpoint } from "../../checkpoint.ts";
import { curvesCsv } from "../../csv.ts";
import { type CurvesRequest, curvesOf, type SettingCurve } from "../../response/curve-reader.ts";
import { curvesText, frequenciesText } from "./curve-answer.ts";

/** What names a setting in an archive. */
export type SettingRow = Omit<SettingCurve, "magnitude" | "phase" | "peak" | "cutoff" | "sources">;

/** An archive's curves, written out by a worker: tens of thousands of numbers would hold up the event loop. */
export interface CurveTexts {
  readonly rows: readonly SettingRow[];
  readonly csv: Uint8Array;
  readonly json: Uint8Array;
}

/** Text in bytes of its own, which may change hands. */
function encoded(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

export function curvesJson(request: CurvesRequest, work: Checkpoint): Uint8Array {
  return curvesText(frequenciesText(request.frequenciesHz), curvesOf(request, work), work);
}

export function curveTexts(request: CurvesRequest, work: Checkpoint): CurveTexts {
  const { frequenciesHz } = request;
  const curves = curvesOf(request, work);
  return {
    rows: curves.map(({ magnitude: _, phase: __, peak: ___, cutoff: ____, sources: _____, ...row }) => row),
    csv: encoded(
      curvesCsv(
        frequenciesHz,
        curves.map(({ setting: name, magnitude }) => ({ name, magnitude })),
      ),
    ),
    json: curvesText(frequenciesText(frequenciesHz), curves, work),
  };
}
