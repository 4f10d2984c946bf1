import { h, s } from "../dom/element.ts";
import { partLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import { boxOf, type LaidGuard, layGuard } from "./laid-guard.ts";
import { drawLug } from "./lugs-layer.ts";
import { drawParts } from "./parts-layer.ts";
import type { SeenLug } from "./view.ts";

/** Room about the parts that the probes touch, and the least that is shown of the guard. */
const MARGIN = 60;
const LEAST = { width: 420, height: 260 };
/** The probes, by the colours of a meter's leads and by letters: colour is not needed to tell them apart. */
const PROBES = ["A", "B"] as const;

/** The part of the guard about two lugs. */
function crop({ placed, side }: LaidGuard, parts: readonly string[]): string {
  const boxes = placed.filter(({ name }) => parts.includes(name)).map((each) => boxOf(each, side));
  const spanOf = (low: number, high: number, least: number) => {
    const grown = Math.max(least, high - low + 2 * MARGIN);
    return [(low + high - grown) / 2, grown] as const;
  };
  const [x, width] = spanOf(
    Math.min(...boxes.map((box) => box.x)),
    Math.max(...boxes.map((box) => box.x + box.width)),
    LEAST.width,
  );
  const [y, height] = spanOf(
    Math.min(...boxes.map((box) => box.y)),
    Math.max(...boxes.map((box) => box.y + box.height)),
    LEAST.height,
  );
  return [x, y, width, height].map(Math.round).join(" ");
}

function probe({ x, y }: SeenLug, letter: string): SVGElement {
  return s(
    "g",
    { class: `probe probe-${letter.toLowerCase()}`, transform: `translate(${x} ${y})` },
    s("circle", { r: 16 }),
    s("path", { d: "M11 -11L30 -30" }),
    s("circle", { class: "probe-letter", cx: 40, cy: -40, r: 15 }),
    s("text", { x: 40, y: -34, "text-anchor": "middle" }, letter),
  );
}

/** Where the two probes of a meter go, on as much of the guard as shows it, seen from the back. */
export function probePicture(reading: Reading, between: readonly [string, string]): HTMLElement {
  const { build } = reading;
  const laid = layGuard(build, "back");
  const parts = between.map((lug) => lug.split(".")[0]!);
  const speech = speechOf(reading);
  const isMeant = (name: string) => parts.includes(name);
  const { bodies, captions } = drawParts(laid, ({ name }) => ({
    cls: isMeant(name) ? "" : "part-dead",
    state: { label: partLabel(build, name), value: "", shaft: undefined, coil: () => "plain" },
  }));
  const wires = laid.routes.map(({ d }) => s("path", { d, class: "wire wire-idle" }));
  const lugs = [...laid.lugs.values()].filter(({ name }) => isMeant(name.split(".")[0]!));
  const name = `Probe A on ${speech.words.of(between[0])}, probe B on ${speech.words.of(between[1])}, seen from the back`;
  return h(
    "figure",
    { class: "probe-picture" },
    s(
      "svg",
      { viewBox: crop(laid, parts), class: "drawing", role: "img", "aria-label": name },
      s("g", {}, bodies),
      s("g", {}, wires),
      s(
        "g",
        {},
        lugs.map((lug) => drawLug(lug, laid.labels.get(lug.name), { cls: "", title: lug.name, attributes: {} })),
      ),
      s("g", {}, captions),
      between.map((lug, index) => {
        const seen = laid.find(lug);
        return seen && probe(seen, PROBES[index]!);
      }),
    ),
    h(
      "figcaption",
      {},
      between.map((lug, index) => h("span", {}, h("b", {}, `${PROBES[index]}: `), speech.lug(lug), " ")),
      "Seen from the back.",
    ),
  );
}
