import type { CurveAnswer } from "../../contract/response.ts";
import type { SettingCurve } from "../../response/curve-reader.ts";

/** A millionth of a decibel, degree or hertz is far below what anybody needs and halves the answer. */
function rounded(values: Float64Array): number[] {
  const numbers = new Array<number>(values.length);
  for (let i = 0; i < numbers.length; i++) numbers[i] = Math.round(values[i]! * 1e6) / 1e6;
  return numbers;
}

function curveAnswer(curve: SettingCurve): CurveAnswer {
  const { sources, ...rest } = curve;
  const answer = {
    ...rest,
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

/** The `frequencies` of an answer, as JSON. */
export function frequenciesText(frequenciesHz: Float64Array): string {
  return JSON.stringify(rounded(frequenciesHz));
}

/** One of the `curves` of an answer, as JSON. */
export function curveText(curve: SettingCurve): string {
  return JSON.stringify(curveAnswer(curve));
}

/** An answer of `POST /api/response`, around its frequencies and its curves. */
export const ANSWER_TEXT = { head: '{"frequencies":', middle: ',"curves":[', end: "]}" } as const;
