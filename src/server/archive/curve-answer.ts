import type { Checkpoint } from "../../checkpoint.ts";
import type { CurveAnswer } from "../../contract/response.ts";
import type { SettingCurve } from "../../response/curve-reader.ts";
import { TextBytes } from "./text-bytes.ts";

/** Decibels and degrees, written to a millionth: far below what anybody needs, and it halves the answer. */
interface Curve {
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
}

/** All but its numbers, an object's text left open at its end. */
const opened = (rest: object) => JSON.stringify(rest).slice(0, -1);

function writeCurve(to: TextBytes, { magnitude, phase }: Curve, rest: object): void {
  to.text(`${opened(rest)},"magnitude":[`).millionths(magnitude);
  to.text('],"phase":[').millionths(phase).text("]");
}

function writeSetting(to: TextBytes, curve: SettingCurve): void {
  const { magnitude: _, phase: __, sources, ...rest } = curve;
  writeCurve(to, curve, rest satisfies Omit<CurveAnswer, "magnitude" | "phase" | "sources">);
  if (sources) {
    to.text(',"sources":[');
    for (const [index, source] of sources.entries()) {
      const { magnitude: _, phase: __, ...named } = source;
      if (index > 0) to.text(",");
      writeCurve(to, source, named);
      to.text("}");
    }
    to.text("]");
  }
  to.text("}");
}

/** The `frequencies` of an answer, as JSON in UTF-8. */
export function frequenciesText(frequenciesHz: Float64Array): Uint8Array {
  return new TextBytes().text("[").millionths(frequenciesHz).text("]").whole();
}

/**
 * The answer of `POST /api/response` as JSON in UTF-8, written curve by curve so that the work can stop between two.
 * @param frequencies as `frequenciesText` writes them
 */
export function curvesText(frequencies: Uint8Array, curves: readonly SettingCurve[], work: Checkpoint): Uint8Array {
  const to = new TextBytes().text('{"frequencies":').bytes(frequencies).text(',"curves":[');
  for (const [index, curve] of curves.entries()) {
    work.checkpoint();
    if (index > 0) to.text(",");
    writeSetting(to, curve);
  }
  return to.text("]}").whole();
}
