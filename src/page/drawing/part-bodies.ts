import { s } from "../dom/element.ts";
import type { Placed } from "./arrange.ts";
import { jackBody } from "./bodies/jack-body.ts";
import { legText } from "./bodies/part-words.ts";
import { pickupBody } from "./bodies/pickup-body.ts";
import { potBody } from "./bodies/pot-body.ts";
import { switchBody } from "./bodies/switch-body.ts";
import { anchorOf, MAX_LABEL } from "./bodies/text-boxes.ts";
import type { PartText } from "./bodies/texts.ts";
import { type Side, seenFrom } from "./view.ts";

/** What a body shows beside its lugs. */
export interface BodyState {
  readonly label: string;
  /** Within a pot. */
  readonly value: string;
  /** How the switch on the shaft stands, where there is one. */
  readonly shaft: string | undefined;
  /** Where no setting is shown, coils are plain. */
  coil(name: string): "live" | "dead" | "plain";
}

/** From a text's middle to its baseline. */
const HALF_LETTER = 5;

function shownText({ part }: Placed, { what, coil = "" }: PartText, state: BodyState): string {
  switch (what) {
    case "shaft":
      return state.shaft === undefined ? "" : `push-pull: ${state.shaft}`;
    case "name":
      return part.kind === "pickup" ? state.label.split(":")[0]! : state.label;
    case "coil":
      return part.kind === "pickup" && Object.keys(part.coils).length > 1 ? coil : "";
    case "off":
      return state.coil(coil) === "dead" ? "off" : "";
    case "value":
      return part.kind === "pot" ? state.value : legText(part);
  }
}

const CLASSES = { name: "part-name", shaft: "part-name", value: "part-value", coil: "coil-name", off: "coil-off" };

function drawText(placed: Placed, text: PartText, side: Side, state: BodyState): SVGElement {
  const { centre, part, name } = placed;
  const whole = shownText(placed, text, state);
  const short = whole.length > MAX_LABEL ? `${whole.slice(0, MAX_LABEL - 1).trimEnd()}…` : whole;
  const { x, y } = seenFrom(side, { x: centre.x + text.x, y: centre.y + text.y });
  return s(
    "text",
    {
      x: Math.round(x * 10) / 10,
      y: Math.round((y + HALF_LETTER) * 10) / 10,
      class: CLASSES[text.what],
      "text-anchor": anchorOf(placed, text, side),
      ...(text.what === "value" && part.kind === "pot" ? { "data-dial": name } : {}),
    },
    short,
    short === whole ? false : s("title", {}, whole),
  );
}

/** A cap's two plates or a resistor's stick, between its legs. */
function legged(kind: "cap" | "resistor"): SVGElement[] {
  if (kind === "resistor")
    return [
      s("path", { d: "M-34 0H-18M18 0H34", class: "leg" }),
      s("rect", { x: -18, y: -8, width: 36, height: 16, class: "body" }),
    ];
  return [s("path", { d: "M-34 0H-5M5 0H34", class: "leg" }), s("path", { d: "M-5 -14V14M5 -14V14", class: "plate" })];
}

/** What of a part is no text, about its middle as seen from the back and not turned. */
function bodyOf({ part, upright }: Placed, coil: BodyState["coil"]): SVGElement[] {
  switch (part.kind) {
    case "pickup":
      return pickupBody(part, coil);
    case "pot":
      return potBody(part, upright);
    case "switch":
      return switchBody(part, upright);
    case "jack":
      return jackBody(part, upright);
    case "cap":
    case "resistor":
      return legged(part.kind);
    case "terminal":
      return [];
  }
}

/** What of a part is no text, about its middle, where no setting is shown. */
export function bodyShapes(placed: Placed): SVGElement[] {
  return bodyOf(placed, () => "plain");
}

/** The body of a part where it lies on the page, its texts upright. */
export function partBody(placed: Placed, side: Side, state: BodyState): SVGElement[] {
  const { centre, turn, shape } = placed;
  const middle = seenFrom(side, centre);
  const mirror = side === "front" ? -1 : 1;
  // Counter-clockwise from the back is clockwise from the front, where all is mirrored.
  const transform = `translate(${middle.x} ${middle.y}) scale(${mirror} 1) rotate(${-turn})`;
  const texts = shape.texts.map((text) => drawText(placed, text, side, state));
  return [s("g", { transform }, bodyOf(placed, state.coil)), ...texts];
}
