import type { HeightsAnswer } from "../../contract/bench/heights.ts";
import { s } from "../dom/element.ts";

type ScrewTold = HeightsAnswer["pickups"][number]["screws"][number];

const POLES = [52, 71, 90, 110, 129, 148];
const PLACES = { bass: 22, treble: 178 } as const;
/** Three quarters round a screw, from the top. */
const ARC = "M 0 -15 A 15 15 0 1 1 -15 0";

/** An arrow round a screw the way it is turned. */
function arrow({ side, direction, clockwise }: ScrewTold): SVGElement | undefined {
  if (direction === "stays") return undefined;
  const flip = clockwise ? "" : " scale(-1 1)";
  return s(
    "g",
    { class: "turn-arrow", transform: `translate(${PLACES[side]} 30)${flip}` },
    s("path", { d: ARC }),
    s("path", { class: "turn-head", d: "M -20 3 L -15 -6 L -10 3 Z" }),
  );
}

function screw(x: number): SVGElement {
  return s(
    "g",
    { class: "screw-head", transform: `translate(${x} 30)` },
    s("circle", { r: 7 }),
    s("path", { d: "M -4 -4 L 4 4 M -4 4 L 4 -4" }),
  );
}

/** A pickup from above with its two screws, the bass side left, and which way each is turned. */
export function screwPicture(name: string, screws: readonly ScrewTold[]): SVGElement {
  const label = `${name} from above: ${screws.map(({ text }) => text).join(" ")}`;
  return s(
    "svg",
    { viewBox: "0 0 200 72", class: "screw-picture", role: "img", "aria-label": label },
    s("rect", { class: "screw-body", x: 38, y: 16, width: 124, height: 28, rx: 14 }),
    POLES.map((x) => s("circle", { class: "screw-pole", cx: x, cy: 30, r: 4 })),
    screws.map((each) => [screw(PLACES[each.side]), arrow(each)]),
    s("text", { x: PLACES.bass, y: 66, class: "screw-side" }, "bass"),
    s("text", { x: PLACES.treble, y: 66, class: "screw-side" }, "treble"),
  );
}
