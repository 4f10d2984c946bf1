import { showQuantity } from "../../build-file/show-quantity.ts";
import type { BuildableAnswer, BuildableFound } from "../../contract/buildable.ts";
import { createCautions } from "../bench/cautions.ts";
import { h } from "../dom/element.ts";

function scoreWords({ sounds, humFree, unevenness, trebleLoss }: BuildableFound["score"]): string {
  const told = sounds === 1 ? "1 sound told apart" : `${sounds} sounds told apart`;
  return `${told}, ${humFree} of them without hum; positions within ${unevenness.toFixed(1)} LU; volume at 5 takes ${trebleLoss.toFixed(1)} dB of treble`;
}

/** Farads are never as many as ohms. */
const LEAST_OHMS = 1e-3;

/** What stays over of one sort; of parts alike each is told by what it measured. */
function overWords({ what, count, measured }: BuildableFound["staysOver"][number]): string {
  if (measured === undefined) return `${count} × ${what}`;
  return `${count} × ${what}, measured ${showQuantity(measured, measured < LEAST_OHMS ? "capacitance" : "resistance")}`;
}

function foundView(found: BuildableFound, rank: number, open: (found: BuildableFound) => void): HTMLElement {
  const { says, score, guards, heard, staysOver, parts } = found;
  const [layout, ...rest] = says;
  const others =
    guards === 1
      ? ""
      : ` · the best of ${heard === guards ? "" : `${heard} heard of `}${guards} with other pots, caps and tones`;
  return h(
    "li",
    { class: "drawer-found" },
    h("h4", {}, `${rank}. ${layout}`),
    h("p", {}, h("b", {}, scoreWords(score))),
    h(
      "ul",
      {},
      rest.map((line) => h("li", {}, line)),
    ),
    h("p", { class: "hint" }, `${parts} parts${others}`),
    h(
      "details",
      {},
      h("summary", {}, staysOver.length === 0 ? "Nothing stays over" : "What stays over"),
      h(
        "ul",
        {},
        staysOver.map((line) => h("li", {}, overWords(line))),
      ),
    ),
    h(
      "div",
      { class: "buttons" },
      h(
        "button",
        { type: "button", "aria-label": `Open it on the bench: number ${rank}`, onclick: () => open(found) },
        "Open it on the bench",
      ),
    ),
  );
}

const bought = ({ what, opens, isCounted, heard, best }: BuildableAnswer["purchases"][number]) =>
  `${what}: opens ${isCounted ? "" : "more than "}${opens} ${opens === 1 ? "wiring" : "wirings"}${
    best
      ? `; the best of ${heard === opens && isCounted ? "them" : `the ${heard} heard`} has ${best.sounds} ${best.sounds === 1 ? "sound" : "sounds"}, ${best.humFree} without hum`
      : ""
  }`;

/** Guards of the drawer, the best first, and the purchase that opens most. @param open puts one on the bench */
export function buildableView(answer: BuildableAnswer, open: (found: BuildableFound) => void): HTMLElement {
  const { best, purchases, wirings, method, basis, isExhaustive } = answer;
  const buys =
    purchases.length > 0 &&
    h(
      "section",
      { class: "stack" },
      h("h4", {}, "The one purchase that opens most"),
      h(
        "ol",
        {},
        purchases.map((purchase) => h("li", {}, bought(purchase))),
      ),
    );
  if (best.length === 0)
    return h(
      "div",
      { class: "stack" },
      h(
        "p",
        { class: "verdict" },
        "No guard can be made of what lies free in the drawer: it takes a pickup and a pot at least, and a lever or toggle for more than one pickup.",
      ),
      buys,
    );
  return h(
    "div",
    { class: "stack" },
    h("p", { class: isExhaustive ? "verdict" : "caution" }, `${method.charAt(0).toUpperCase()}${method.slice(1)}.`),
    h(
      "ol",
      { class: "drawer-list" },
      best.map((found, index) => foundView(found, index + 1, open)),
    ),
    buys,
    !wirings.isAll && h("p", { class: "hint" }, "The drawer has too many wirings to say which purchase opens most."),
    h("p", { class: "hint" }, basis),
    createCautions(false),
  );
}
