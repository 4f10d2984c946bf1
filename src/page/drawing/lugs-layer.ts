import { s } from "../dom/element.ts";
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

/** Every lug, its name within the part beside it; the whole name shows on pointing at it. Arrow keys walk from one to the next. */
export function drawLug(lug: SeenLug, path: LivePath, labelled: boolean, { words }: LugSpeech): SVGElement {
  const net = path.live.nets.get(lug.name);
  const onHot = path.hot.some((step) => step.from === lug.name || step.to === lug.name);
  const cls = onHot ? "lug lug-live" : net === path.live.sleeveNet ? "lug lug-ground" : "lug";
  const spot = labelSpot(lug);
  return s(
    "g",
    {
      class: cls,
      "data-net": String(net),
      "data-lug": lug.name,
      role: "button",
      tabindex: -1,
      "aria-label": words.of(lug.name),
    },
    s("title", {}, `${words.of(lug.name)} [${lug.name}]`),
    s("circle", { cx: lug.x, cy: lug.y, r: RADIUS }),
    labelled && s("text", { x: spot.x, y: spot.y, class: "lug-name", "text-anchor": "middle" }, lug.label),
  );
}
