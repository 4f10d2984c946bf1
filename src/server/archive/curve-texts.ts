import type { Checkpoint } from "../../checkpoint.ts";
import { curvesCsv } from "../../csv.ts";
import { type CurvesRequest, curvesOf, type SettingCurve } from "../../response/curve-reader.ts";
import { ANSWER_TEXT, curveText, frequenciesText } from "./curve-answer.ts";

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

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((length, piece) => length + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** The answer of `POST /api/response` in UTF-8, written curve by curve so that the work can stop between two. */
function answerText(frequenciesHz: Float64Array, curves: readonly SettingCurve[], work: Checkpoint): Uint8Array {
  const texts = curves.map((curve, index) => {
    work.checkpoint();
    const text = curveText(curve);
    return encoded(index === 0 ? text : `,${text}`);
  });
  const { head, middle, end } = ANSWER_TEXT;
  return joined([encoded(`${head}${frequenciesText(frequenciesHz)}${middle}`), ...texts, encoded(end)]);
}

export function curvesJson(request: CurvesRequest, work: Checkpoint): Uint8Array {
  return answerText(request.frequenciesHz, curvesOf(request, work), work);
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
    json: answerText(frequenciesHz, curves, work),
  };
}
