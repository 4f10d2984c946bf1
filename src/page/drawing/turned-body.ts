import { s } from "../dom/element.ts";
import type { Point } from "./shapes.ts";

/** From a text's baseline to its middle, about. */
const HALF_LETTER = 5;
/** What stands so near a part's middle stays there. */
const NEAR = 25;

function turnText(text: SVGElement, centre: Point, degrees: number): void {
  const [x, y] = [Number(text.getAttribute("x")) - centre.x, Number(text.getAttribute("y")) - HALF_LETTER - centre.y];
  if (Math.hypot(x, y) < NEAR) return;
  const angle = (degrees * Math.PI) / 180;
  const across = x * Math.cos(angle) - y * Math.sin(angle);
  const down = x * Math.sin(angle) + y * Math.cos(angle);
  text.setAttribute("x", String(Math.round(centre.x + across)));
  text.setAttribute("y", String(Math.round(centre.y + down + HALF_LETTER)));
  const isCaption = text.classList.contains("part-name") || text.classList.contains("part-value");
  if (isCaption && Math.abs(across) > NEAR) text.setAttribute("text-anchor", across > 0 ? "start" : "end");
}

/** A body turned clockwise on the page; its texts move along and stay upright. */
export function turnedBody(body: readonly SVGElement[], centre: Point, degrees: number): SVGElement[] {
  if (degrees === 0) return [...body];
  const texts = body.filter((each) => each.localName === "text");
  for (const text of texts) turnText(text, centre, degrees);
  const rest = body.filter((each) => each.localName !== "text");
  return [s("g", { transform: `rotate(${degrees} ${centre.x} ${centre.y})` }, rest), ...texts];
}
