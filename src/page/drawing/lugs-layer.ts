import type { Part } from "../../build-file/schema.ts";
import { type Attributes, s } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import type { LivePath } from "./live-path.ts";
import type { SeenLug } from "./view.ts";

const RADIUS = 7;

function labelSpot({ x, y, out, beside, turned }: SeenLug): { x: number; y: number } {
  if (turned) return { x: x + turned.name.x * 19, y: y + turned.name.y * 14 + 4 };
  if (beside !== undefined) return { x: x + beside * 20, y: y + 4 };
  // Beside the wires that leave the lug, not under them.
  return out === 0 ? { x, y: y - 11 } : { x: x + 1, y: y - out * 14 + 4 };
}

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

/** A lug, its name within the part beside it where the part has more than two. */
export function drawLug(lug: SeenLug, { kind }: Part, { cls, title, attributes }: LugLook): SVGElement {
  const spot = labelSpot(lug);
  const isLabelled = kind !== "cap" && kind !== "resistor";
  return s(
    "g",
    { class: `lug ${cls}`.trim(), ...attributes },
    s("title", {}, title),
    s("circle", { cx: lug.x, cy: lug.y, r: RADIUS }),
    isLabelled && s("text", { x: spot.x, y: spot.y, class: "lug-name", "text-anchor": "middle" }, lug.label),
  );
}
