import { type Attributes, s } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import type { LivePath } from "./live-path.ts";
import type { Point } from "./point.ts";
import { LUG_RADIUS } from "./routes/labels.ts";
import type { SeenLug } from "./view.ts";

/** From a name's middle to its baseline. */
const HALF_LETTER = 4;

const round = (value: number) => Math.round(value * 10) / 10;

export interface LugLook {
  readonly cls: string;
  /** Its whole name, shown on pointing at it. */
  readonly title: string;
  readonly attributes: Attributes;
}

/** A lug in the guard on the bench: lit with its net, and one that arrow keys walk to. */
export function liveLug(name: string, path: LivePath, { words }: LugSpeech): LugLook {
  const net = path.live.nets.get(name);
  const onHot = path.hot.some((step) => step.from === name || step.to === name);
  return {
    cls: onHot ? "lug-live" : net === path.live.sleeveNet ? "lug-ground" : "",
    title: `${words.of(name)} [${name}]`,
    attributes: {
      "data-net": String(net),
      "data-lug": name,
      role: "button",
      tabindex: -1,
      "aria-label": words.of(name),
    },
  };
}

/** A lug, its name within the part near it. @param label the middle of its name; undefined where it needs none */
export function drawLug(lug: SeenLug, label: Point | undefined, { cls, title, attributes }: LugLook): SVGElement {
  return s(
    "g",
    { class: `lug ${cls}`.trim(), ...attributes },
    s("title", {}, title),
    s("circle", { cx: lug.x, cy: lug.y, r: LUG_RADIUS }),
    label &&
      s(
        "text",
        { x: round(label.x), y: round(label.y + HALF_LETTER), class: "lug-name", "text-anchor": "middle" },
        lug.label,
      ),
  );
}
