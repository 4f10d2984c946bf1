import type { FindingAnswer } from "../../contract/bench/bench.ts";
import { s } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import type { Point } from "./point.ts";
import type { SeenLug } from "./view.ts";

/** Each severity has a shape of its own, so that colour is not needed to tell them apart. */
const OUTLINES = {
  fault: "M-11 -11H11V11H-11Z",
  warning: "M0 -15L15 12H-15Z",
  note: "M-12 0A12 12 0 1 0 12 0A12 12 0 1 0 -12 0Z",
} as const;

export function findingSign(severity: FindingAnswer["severity"], number: number): SVGElement[] {
  const y = severity === "warning" ? 9 : 5;
  return [s("path", { d: OUTLINES[severity] }), s("text", { y, "text-anchor": "middle" }, number)];
}

/** What is wrong is marked at every lug; a note, which may name a whole pickup, once a part. */
function markedLugs({ severity, lugs }: FindingAnswer): readonly string[] {
  if (severity !== "note") return lugs;
  const partOf = (lug: string) => lug.split(".")[0];
  return lugs.filter((lug, index) => lugs.findIndex((other) => partOf(other) === partOf(lug)) === index);
}

/** Out where its wires leave, so that the lug's own name stays readable. */
function besideLug({ x, y, leave, beside }: SeenLug): Point {
  const way = leave.x === 0 && leave.y === 0 ? beside : leave;
  return { x: x + way.x * 25, y: y + way.y * 25 };
}

/** A numbered mark beside the lugs that a finding names. */
export function drawFindingMarks(
  findings: readonly FindingAnswer[],
  find: (lug: string) => SeenLug | undefined,
  speech: LugSpeech,
): SVGElement[] {
  const marksAtLug = new Map<string, number>();
  return findings.flatMap((finding, index) =>
    markedLugs(finding).flatMap((name) => {
      const lug = find(name);
      if (!lug) return [];
      const before = marksAtLug.get(lug.name) ?? 0;
      marksAtLug.set(lug.name, before + 1);
      const { x, y } = besideLug(lug);
      const at = `translate(${x + before * 27} ${y})`;
      return [
        s(
          "g",
          { class: `mark mark-${finding.severity}`, transform: at },
          s("title", {}, speech.plain(finding.message)),
          findingSign(finding.severity, index + 1),
        ),
      ];
    }),
  );
}
