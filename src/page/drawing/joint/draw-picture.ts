import type { Build } from "../../../build-file/schema.ts";
import { s } from "../../dom/element.ts";
import { partLabel } from "../../state/names.ts";
import type { Placed } from "../arrange.ts";
import { boxOf } from "../laid-guard.ts";
import { drawLug } from "../lugs-layer.ts";
import { drawParts } from "../parts-layer.ts";
import type { Side } from "../view.ts";
import { type Frame, isIn, touches } from "./frame.ts";
import { isThere, type JointScene, type SceneHeat, type SceneSign } from "./scene.ts";
import type { SceneInput, SceneLine } from "./scene-lines.ts";

const RAYS = 8;

/** Rays about the place that the iron heats: no colour is needed to find it. */
function heatMark({ at, joint }: SceneHeat): SVGElement {
  const [inner, outer] = joint.kind === "case" ? [19, 29] : [13, 22];
  const rays = Array.from({ length: RAYS }, (_, index) => {
    const [x, y] = [Math.cos((index * 2 * Math.PI) / RAYS), Math.sin((index * 2 * Math.PI) / RAYS)];
    return `M${(x * inner).toFixed(1)} ${(y * inner).toFixed(1)}L${(x * outer).toFixed(1)} ${(y * outer).toFixed(1)}`;
  });
  return s(
    "g",
    { class: "heat", transform: `translate(${at.x} ${at.y})`, "data-heated": joint.at, "data-kind": joint.kind },
    s("circle", { r: inner - 2, class: "heat-ring" }),
    s("path", { d: rays.join("") }),
  );
}

function freeEnd({ when, to }: SceneLine): SVGElement {
  return s("circle", { cx: to.x, cy: to.y, r: when === "now" ? 6 : 4, class: `free-end free-end-${when}` });
}

function drawLine(line: SceneLine): SVGElement[] {
  const { piece, when, isGround, d, soldered, tail } = line;
  const cls = `way way-${when} ${isGround ? "way-ground" : "way-hot"}`;
  const data = { "data-piece": piece, "data-when": when, "data-soldered": soldered.join(" ") };
  return [
    // Under the line, so that one wire can be followed where it crosses another.
    ...(when === "now" ? [s("path", { d, class: "way-edge" })] : []),
    s("path", { d, class: cls, ...data, "data-taken-by": tail?.takenBy }),
    ...(tail && when === "before" ? [freeEnd(line)] : []),
  ];
}

function takenText({ text, at: { x, y } }: SceneSign): SVGElement {
  return s("text", { x: x.toFixed(1), y: (y + 5).toFixed(1), "text-anchor": "middle", class: "taken" }, text);
}

function sign({ text, at }: SceneSign): SVGElement {
  return s(
    "g",
    { class: "end-sign", transform: `translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})` },
    s("circle", { r: 11 }),
    s("text", { y: 4.5, "text-anchor": "middle" }, text),
  );
}

/** Pixels a drawing unit on paper and in a list, where there is room. */
const LARGEST = 1.25;
/** About the width of a letter of a caption, in drawing units. */
const LETTER = 7.6;

/** Takes out the texts that the frame would cut through: half a name says another part. */
function withoutCutTexts(element: SVGElement, { x, width }: Frame): SVGElement {
  for (const text of element.querySelectorAll("text")) {
    const at = Number(text.getAttribute("x"));
    const anchor = text.getAttribute("text-anchor") ?? "start";
    const length = (text.firstChild?.textContent ?? "").length * LETTER;
    const left = anchor === "start" ? at : anchor === "end" ? at - length : at - length / 2;
    if (left < x || left + length > x + width) text.remove();
  }
  return element;
}

/** Of a terminal at the edge only a ring without a name would be in the picture. */
function isSeen(placed: Placed, side: Side, frame: Frame): boolean {
  const box = boxOf(placed, side);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  return placed.part.kind === "terminal" ? isIn(frame, middle, -box.width / 2) : touches(frame, box);
}

/** A picture of some joints: what is there already thin, what comes now bold, what is heated with rays about it. */
export function drawPicture(build: Build, { laid }: SceneInput, scene: JointScene, label: string): SVGSVGElement {
  const { of, picture, lines, heats, signs, taken, frame } = scene;
  const heated = new Set(heats.map(({ joint }) => joint.at.split(".", 1)[0]!));
  const placed = laid.placed.filter(
    (each) => heated.has(each.name) || (isThere(picture, each.name, each.part.kind) && isSeen(each, laid.side, frame)),
  );
  const names = new Set(placed.map(({ name }) => name));
  const { bodies, captions } = drawParts({ ...laid, placed }, ({ name }) => ({
    cls: "",
    state: { label: partLabel(build, name), value: "", shaft: undefined, coil: () => "plain" },
  }));
  const lugs = [...laid.lugs.values()].filter((lug) => names.has(lug.name.split(".", 1)[0]!) && isIn(frame, lug, 10));
  const [before, now] = ["before", "now"].map((when) => lines.filter((each) => each.when === when));
  const { x, y, width, height } = frame;
  // Letters stand where its name would; the words beside the picture say it.
  const named = of === "joint" && signs.length > 0 ? heats[0]!.joint.at.split(".", 1)[0] : undefined;
  return s(
    "svg",
    {
      viewBox: `${x} ${y} ${width} ${height}`,
      width: Math.round(width * LARGEST),
      class: `drawing joint-picture picture-of-${of}`,
      role: "img",
      "aria-label": label,
    },
    s("g", {}, bodies),
    s("g", {}, before!.flatMap(drawLine)),
    s("g", {}, heats.map(heatMark)),
    s(
      "g",
      {},
      lugs.map((lug) => {
        const look = { cls: "", title: lug.name, attributes: {} };
        return withoutCutTexts(drawLug(lug, laid.labels.get(lug.name), look), frame);
      }),
    ),
    // Over the lugs' names, since a jumper between two lugs is shorter than they are.
    s("g", {}, now!.flatMap(drawLine)),
    s(
      "g",
      {},
      captions.filter((_, index) => placed[index]!.name !== named).map((caption) => withoutCutTexts(caption, frame)),
    ),
    // Over the captions too: whether an end hangs is what counts.
    s("g", {}, now!.filter(({ tail }) => tail).map(freeEnd)),
    s("g", {}, taken.map(takenText)),
    s("g", {}, signs.map(sign)),
  );
}
