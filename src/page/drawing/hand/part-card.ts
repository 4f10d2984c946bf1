import { TURN_STEP_DEGREES } from "../../../build-file/turn-step.ts";
import { h } from "../../dom/element.ts";
import { partLabel } from "../../state/names.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import type { Hand } from "./hand.ts";

const PICKUPS_SOUND = "How a pickup sounds goes by its coils' distance from the bridge, not by where it is drawn.";

/** @param turn degrees counter-clockwise on the page */
function turnWords(turn: number): string {
  return turn === 0 ? "Not turned." : `Turned ${Math.abs(turn)}° to the ${turn > 0 ? "left" : "right"}.`;
}

/** Where a part is drawn, and the ways to move it. */
export function partCard(name: string, { input, placed }: GuardDrawing, hand: Hand): HTMLElement[] {
  const { build } = input.reading;
  const part = placed.find((each) => each.name === name);
  if (!part) return [];
  const turn = (words: string, key: string, steps: number) =>
    h("button", { type: "button", "data-key": key, onclick: () => hand.turnPart(name, steps) }, words);
  // From the front, left is where right was.
  const left = input.side === "front" ? -1 : 1;
  return [
    h("h3", {}, partLabel(build, name)),
    h(
      "p",
      { class: "hint" },
      `${turnWords(part.turn * left)} Drag it, or move it by the arrow keys, a millimetre each; `,
      "a finger drags what is chosen.",
      part.part.kind === "pickup" && ` ${PICKUPS_SOUND}`,
    ),
    h(
      "div",
      { class: "buttons" },
      turn(`Turn left ${TURN_STEP_DEGREES}°`, "left", left),
      turn(`Turn right ${TURN_STEP_DEGREES}°`, "right", -left),
      h("button", { type: "button", class: "quiet", onclick: () => hand.choose(undefined) }, "Done"),
    ),
  ];
}
