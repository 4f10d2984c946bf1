import type { Build } from "../../../build-file/schema.ts";
import { listed } from "../../../english.ts";
import { isCase } from "../pieces/loose-ends.ts";
import type { Pieces } from "../pieces/pieces.ts";
import type { SheetJoint } from "../sheet-writer.ts";
import type { CutWire } from "../wire/cut-list.ts";

type PieceList = Pieces["pieces"];

/** "volume.1 (joint 14)": a bent lug, and the joint at the case that takes it in. */
function bentLugs(pieces: PieceList, joints: readonly SheetJoint[]): string[] {
  return pieces
    .filter(({ means, grown }) => means === "bent lug" && grown)
    .map(({ number, stops }) => {
      const joint = joints.find(({ ends }) => ends.some(({ wire }) => wire === number));
      return joint ? `${stops[0]} (joint ${joint.number})` : stops[0]!;
    });
}

/** What to do before the iron is hot. */
export function preparations(
  build: Build,
  pieces: PieceList,
  cuts: readonly CutWire[],
  joints: readonly SheetJoint[],
): string[] {
  const cases = [...new Set(pieces.flatMap(({ stops }) => stops).filter((stop) => isCase(build, stop)))];
  const bent = bentLugs(pieces, joints);
  const legs = pieces.some(({ means }) => means === "leg");
  return [
    ...(cases.length > 0
      ? [`Tin the roughened spots on ${listed(cases)} now; tinned metal takes the joint in half the time.`]
      : []),
    ...(bent.length > 0
      ? [`Bend back until they lie on the case; each is soldered later, in the joint named: ${listed(bent)}.`]
      : []),
    ...(legs ? ["Sleeve every leg of a cap or resistor that passes a case."] : []),
    ...(cuts.length > 0 ? [`Cut and strip the ${cuts.length} wires of the cut list; mark each with its number.`] : []),
  ];
}
