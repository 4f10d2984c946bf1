import { replaceContent, s } from "../../dom/element.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import { boxOf } from "../laid-guard.ts";
import type { Point } from "../point.ts";
import type { Hand } from "./hand.ts";

/** Draws the wire that follows the pointer, or takes it away. */
export function stretchRubber({ overlay, lugs }: GuardDrawing, from: string | undefined, to?: Point): void {
  const rubber = overlay.querySelector(".rubber")!;
  const start = from === undefined ? undefined : lugs.get(from);
  if (start && to) rubber.setAttribute("d", `M${start.x} ${start.y}L${to.x} ${to.y}`);
  else rubber.removeAttribute("d");
}

/** Shows a part elsewhere until the drawing is drawn again; what is wired to it waits. */
export function shiftPart({ element }: GuardDrawing, name: string, { x, y }: Point): void {
  const isOfPart = (each: SVGElement) => {
    const { part, caption, lug } = each.dataset;
    return part === name || caption === name || lug === name || lug?.startsWith(`${name}.`);
  };
  for (const each of element.querySelectorAll<SVGElement>("[data-part], [data-caption], [data-lug]"))
    if (isOfPart(each)) each.setAttribute("transform", `translate(${x} ${y})`);
}

function ring({ lugs }: GuardDrawing, name: string, cls: string, radius: number): SVGElement[] {
  const lug = lugs.get(name);
  return lug ? [s("circle", { cx: lug.x, cy: lug.y, r: radius, class: cls })] : [];
}

/** A square, as faults have everywhere on the page. */
function warning({ lugs }: GuardDrawing, name: string): SVGElement[] {
  const lug = lugs.get(name);
  return lug ? [s("rect", { x: lug.x - 12, y: lug.y - 12, width: 24, height: 24, class: "would-fault" })] : [];
}

function partFrame({ placed, input }: GuardDrawing, name: string): SVGElement[] {
  const part = placed.find((each) => each.name === name);
  if (!part) return [];
  return [s("rect", { ...boxOf(part, input.side), rx: 10, class: "chosen-part" })];
}

function chosenSigns(drawing: GuardDrawing, hand: Hand): SVGElement[] {
  const { chosen } = hand.state.state;
  if (chosen?.kind === "part") return partFrame(drawing, chosen.name);
  if (chosen?.kind !== "wire") return [];
  const index = drawing.input.reading.source.wires.indexOf(chosen.wire);
  const line = drawing.element.querySelector(`[data-line="${index}"]`)?.getAttribute("d");
  const ends = hand.endsOf(chosen.wire).flatMap((lug) => ring(drawing, lug, "chosen-end", 13));
  return line ? [s("path", { d: line, class: "chosen-wire" }), ...ends] : [];
}

/** Shows what is held and chosen, and the lugs that a wire would make a fault at. */
export function showInHand(drawing: GuardDrawing, hand: Hand): void {
  const { held, warnings } = hand.state.state;
  replaceContent(
    drawing.overlay.querySelector(".signs")!,
    chosenSigns(drawing, hand),
    held && ring(drawing, held.from, "held", 13),
    [...warnings.keys()].map((lug) => warning(drawing, lug)),
  );
  for (const lug of drawing.element.querySelectorAll<SVGElement>("[data-lug]")) {
    const name = lug.dataset.lug!;
    lug.setAttribute("aria-label", warnings.has(name) ? `${name}: would make a fault` : name);
    lug.classList.toggle("lug-would-fault", warnings.has(name));
  }
  if (!held) stretchRubber(drawing, undefined);
}
