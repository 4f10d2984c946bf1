import { h, replaceContent, s } from "../dom/element.ts";
import { type FeaturedTrace, isOtherBuild } from "./family.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";
import { isSilent, referenceLevelDb } from "./levels.ts";
import type { Picture } from "./picture.ts";
import { showDb, showHz } from "./units.ts";

/** Peak and cutoff of a curve, in words; of silence, that there is nothing to hear. */
export function featuresText({ peak, cutoff, magnitude }: FeaturedTrace): string {
  if (isSilent(magnitude)) return "Nothing to hear yet: no signal reaches the jack.";
  const peakText = peak
    ? `Peak at ${showHz(peak.frequency)}, ${showDb(peak.level)} over 200 Hz.`
    : "No peak above the level at 200 Hz.";
  const cutoffText = cutoff === null ? "Never falls 3 dB below it." : `3 dB down at ${showHz(cutoff)}.`;
  return `${peakText} ${cutoffText}`;
}

function levelAt(picture: Picture, magnitude: Float64Array, index: number): string {
  const offset = picture.view === "true" ? 0 : referenceLevelDb(magnitude);
  return showDb(magnitude[index]! - offset);
}

/** Name, line and features of the build that is compared with. */
function otherFeatures(trace: FeaturedTrace): HTMLElement {
  return h(
    "span",
    { class: "readout-text readout-other" },
    s(
      "svg",
      { viewBox: "0 0 36 8", width: 36, height: 8, "aria-hidden": "true" },
      s("path", { d: "M1 4H35", class: "other-line" }),
    ),
    h("b", {}, ` B, ${trace.title || "the other guard"}: `),
    featuresText(trace),
  );
}

/** The levels of every curve at the pointer; without a pointer, what the current curve is like. */
export function showReadout(element: HTMLElement, picture: Picture, index: number | null): void {
  const { current, behind } = picture.family;
  if (index === null) {
    const other = behind.find(isOtherBuild);
    replaceContent(
      element,
      h("span", { class: "readout-text" }, other && h("b", {}, "This guard: "), featuresText(current)),
      other && otherFeatures(other),
    );
    return;
  }
  replaceContent(
    element,
    h("b", {}, showHz(FREQUENCIES_HZ[index]!)),
    [current, ...behind].map((trace) =>
      h(
        "span",
        { class: trace === current ? "readout-item readout-now" : "readout-item" },
        h("span", { class: "readout-name" }, trace.name),
        ` ${levelAt(picture, trace.magnitude, index)}`,
      ),
    ),
  );
}
