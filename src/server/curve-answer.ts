import type { z } from "zod";
import type { SettingCurve } from "../render/curves.ts";
import type { curveSchema, curvesAnswerSchema } from "./answer-schemas.ts";

/** A millionth of a decibel, degree or hertz is far below what anybody needs and halves the answer. */
function rounded(values: Float64Array): number[] {
  return Array.from(values, (value) => Math.round(value * 1e6) / 1e6);
}

function curveAnswer(curve: SettingCurve): z.output<typeof curveSchema> {
  const { sources, ...rest } = curve;
  const answer = {
    ...rest,
    active: [...rest.active],
    magnitude: rounded(curve.magnitude),
    phase: rounded(curve.phase),
  };
  if (!sources) return answer;
  return {
    ...answer,
    sources: sources.map((source) => ({
      ...source,
      magnitude: rounded(source.magnitude),
      phase: rounded(source.phase),
    })),
  };
}

/** Curves as `POST /api/response` answers them. */
export function curvesAnswer(
  frequenciesHz: Float64Array,
  curves: readonly SettingCurve[],
): z.output<typeof curvesAnswerSchema> {
  return { frequencies: rounded(frequenciesHz), curves: curves.map(curveAnswer) };
}
