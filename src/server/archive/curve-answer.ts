import type { Checkpoint } from "../../checkpoint.ts";
import type { CurveAnswer } from "../../contract/response.ts";
import type { SettingCurve } from "../../response/curve-reader.ts";
import { CURVE_DIGITS, type Digits, SOURCE_DIGITS } from "../../response/digits/open-points.ts";
import type { LevelAndPhase } from "../../response/level-and-phase.ts";
import { TextBytes } from "./text-bytes.ts";

/** A millionth is far below what anybody needs of a frequency. */
const HERTZ_PLACES = 6;

/** All but its numbers, an object's text left open at its end. */
const opened = (rest: object) => JSON.stringify(rest).slice(0, -1);

function writeCurve(to: TextBytes, { magnitude, phase }: LevelAndPhase, digits: Digits, rest: object): void {
  to.text(`${opened(rest)},"magnitude":[`).numbers(magnitude, digits.level.places);
  to.text('],"phase":[').numbers(phase, digits.phase.places).text("]");
}

function writeSetting(to: TextBytes, curve: SettingCurve): void {
  const { magnitude: _, phase: __, sources, ...rest } = curve;
  writeCurve(to, curve, CURVE_DIGITS, rest satisfies Omit<CurveAnswer, "magnitude" | "phase" | "sources">);
  if (sources) {
    to.text(',"sources":[');
    for (const [index, source] of sources.entries()) {
      const { magnitude: _, phase: __, ...named } = source;
      if (index > 0) to.text(",");
      writeCurve(to, source, SOURCE_DIGITS, named);
      to.text("}");
    }
    to.text("]");
  }
  to.text("}");
}

/** The `frequencies` of an answer, as JSON in UTF-8. */
export function frequenciesText(frequenciesHz: Float64Array): Uint8Array {
  return new TextBytes().text("[").numbers(frequenciesHz, HERTZ_PLACES).text("]").whole();
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
