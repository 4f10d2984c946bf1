import type { Part } from "../../build-file/schema.ts";
import type { SettingValue } from "../../build-file/settings.ts";
import { shortQuantity, showQuantity } from "../../build-file/show-quantity.ts";
import { s } from "../dom/element.ts";
import type { Placed } from "./arrange.ts";
import { coilCentres, type Point, SIZES } from "./shapes.ts";
import { turnedBody } from "./turned-body.ts";

/** What a body shows beside its lugs. */
export interface BodyState {
  readonly label: string;
  /** Within a pot. */
  readonly value: string;
  /** −1 where left and right are exchanged, as seen from the front. */
  readonly mirror: 1 | -1;
  /** How the switch on the shaft stands, where there is one. */
  readonly shaft: string | undefined;
  /** Where no setting is shown, coils are plain. */
  coil(name: string): "live" | "dead" | "plain";
}

type Kind<K extends Part["kind"]> = Extract<Part, { kind: K }>;

const MAX_LABEL = 30;

function caption(text: string, { x, y }: Point, cls = "part-name"): SVGElement {
  const short = text.length > MAX_LABEL ? `${text.slice(0, MAX_LABEL - 1).trimEnd()}…` : text;
  return s("text", { x, y, class: cls, "text-anchor": "middle" }, short, s("title", {}, text));
}

function pickupBody(part: Kind<"pickup">, centre: Point, state: BodyState): SVGElement[] {
  const { coilWidth, coilHeight } = SIZES;
  const centres = coilCentres(part);
  const width = (centres.length - 1) * SIZES.coilGap + coilWidth + 22;
  const bars = centres.flatMap(({ coil, x: along }) => {
    const x = along * state.mirror;
    const how = state.coil(coil);
    const left = centre.x + x - coilWidth / 2;
    const name = centres.length > 1 ? coil : "";
    return [
      s("rect", {
        x: left,
        y: centre.y - coilHeight / 2 + 8,
        width: coilWidth,
        height: coilHeight - 16,
        rx: 14,
        class: `coil coil-${how}`,
      }),
      s("text", { x: centre.x + x, y: centre.y + 5, class: "coil-name", "text-anchor": "middle" }, name),
      ...(how === "dead"
        ? [s("text", { x: centre.x + x, y: centre.y + 22, class: "coil-off", "text-anchor": "middle" }, "off")]
        : []),
    ];
  });
  const outline = {
    x: centre.x - width / 2,
    y: centre.y - coilHeight / 2,
    width,
    height: coilHeight,
    rx: 18,
    class: "body",
  };
  const nameY = centre.y + coilHeight / 2 + 24;
  return [s("rect", outline), ...bars, caption(state.label.split(":")[0]!, { x: centre.x, y: nameY })];
}

/** "250k at 7". */
export function dialText(pot: Kind<"pot">, dial: SettingValue | undefined): string {
  return `${shortQuantity(pot.measured ?? pot.resistance)} at ${dial ?? 10}`;
}

function potBody({ name, upright }: Placed, centre: Point, state: BodyState): SVGElement[] {
  const { potRadius } = SIZES;
  const nameY = centre.y - potRadius - 19;
  return [
    s("circle", { cx: centre.x, cy: centre.y, r: potRadius, class: "body" }),
    s(
      "text",
      { x: centre.x, y: centre.y + 14, class: "part-value", "text-anchor": "middle", "data-dial": name },
      state.value,
    ),
    caption(state.label, { x: centre.x, y: nameY }),
    ...(state.shaft ? [caption(`push-pull: ${state.shaft}`, { x: centre.x, y: centre.y - upright.down + 10 })] : []),
  ];
}

function switchBody(centre: Point, placed: Placed, state: BodyState): SVGElement[] {
  const { width, up } = placed.upright;
  const inner = 2 * up;
  return [
    s("rect", { x: centre.x - width / 2, y: centre.y - inner / 2, width, height: inner, rx: 8, class: "body" }),
    caption(state.label, { x: centre.x, y: centre.y - inner / 2 - 9 }),
  ];
}

function capBody(part: Kind<"cap">, { x, y }: Point): SVGElement[] {
  return [
    s("path", { d: `M${x - 34} ${y}H${x - 5}M${x + 5} ${y}H${x + 34}`, class: "leg" }),
    s("path", { d: `M${x - 5} ${y - 14}V${y + 14}M${x + 5} ${y - 14}V${y + 14}`, class: "plate" }),
    caption(showQuantity(part.capacitance, "capacitance"), { x, y: y - 20 }, "part-value"),
  ];
}

function resistorBody(part: Kind<"resistor">, { x, y }: Point): SVGElement[] {
  return [
    s("path", { d: `M${x - 34} ${y}H${x - 18}M${x + 18} ${y}H${x + 34}`, class: "leg" }),
    s("rect", { x: x - 18, y: y - 8, width: 36, height: 16, class: "body" }),
    caption(showQuantity(part.resistance, "resistance"), { x, y: y - 14 }, "part-value"),
  ];
}

function uprightBody(placed: Placed, centre: Point, state: BodyState): SVGElement[] {
  const { part } = placed;
  const below = { x: centre.x, y: centre.y + 26 };
  switch (part.kind) {
    case "pickup":
      return pickupBody(part, centre, state);
    case "pot":
      return potBody(placed, centre, state);
    case "switch":
      return switchBody(centre, placed, state);
    case "cap":
      return capBody(part, centre);
    case "resistor":
      return resistorBody(part, centre);
    case "jack":
      return [
        s("circle", { cx: centre.x, cy: centre.y, r: SIZES.jackRadius, class: "body" }),
        s("circle", { cx: centre.x, cy: centre.y, r: 9, class: "body" }),
        caption(state.label, { x: centre.x, y: centre.y - SIZES.jackRadius - 11 }),
      ];
    case "terminal":
      return [caption(state.label, below)];
  }
}

/** The body of a part about its middle on the page. */
export function partBody(placed: Placed, centre: Point, state: BodyState): SVGElement[] {
  // Counter-clockwise from the back is clockwise from the front.
  return turnedBody(uprightBody(placed, centre, state), centre, -placed.turn * state.mirror);
}
