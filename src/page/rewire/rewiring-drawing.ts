import type { Step } from "../../build-file/rewire/steps.ts";
import { shortQuantity } from "../../build-file/show-quantity.ts";
import { s } from "../dom/element.ts";
import { boxOf, type LaidGuard, layGuard } from "../drawing/laid-guard.ts";
import { drawLug } from "../drawing/lugs-layer.ts";
import { drawParts, type PartLook } from "../drawing/parts-layer.ts";
import { partLabel } from "../state/names.ts";
import { JointSpots } from "./joint-spots.ts";
import type { Belongs, Scene } from "./scene.ts";
import { jointSign } from "./signs.ts";

export interface RewiringDrawing {
  readonly element: SVGSVGElement;
  /** The joints in the order of their steps. */
  readonly joints: readonly SVGElement[];
  /** Makes a step's joint, and the wire that it is an end of, stand out from the rest. */
  light(step: number | undefined): void;
  tick(step: number, isDone: boolean): void;
}

const classOf = (belongs: Belongs | undefined) => (belongs === "both" ? "" : `only-${belongs}`);

function partLook({ build, belongs }: Scene, name: string): PartLook {
  const part = build.parts[name]!;
  return {
    cls: classOf(belongs.get(name)),
    state: {
      label: partLabel(build, name),
      value: part.kind === "pot" ? shortQuantity(part.measured ?? part.resistance) : "",
      shaft: undefined,
      coil: () => "plain",
    },
  };
}

/** A frame, dashed or bold, about each part that is not in both guards; and above it, clear of all wires, words. */
function changedParts({ belongs }: Scene, { placed, side }: LaidGuard, out: Belongs) {
  const changed = placed.filter(({ name }) => belongs.get(name) !== "both");
  return changed.map((part) => {
    const box = boxOf(part, side);
    const of = belongs.get(part.name)!;
    const at = { x: box.x + box.width / 2, y: box.y - 7, "text-anchor": "middle" };
    return {
      frame: s("rect", { ...box, rx: 10, class: `${of === out ? "goes-out" : "comes-in"} ${classOf(of)}` }),
      word: s("text", { ...at, class: `change-word ${classOf(of)}` }, of === out ? "goes out" : "comes in"),
    };
  });
}

const LINES = ["stays", "opens", "comes"] as const;

function drawLines(scene: Scene, laid: LaidGuard) {
  return scene.lines.map(({ from, to, what, belongs }, index) => {
    const a = laid.find(from)!;
    const curve = laid.routes[index]!;
    const title = s("title", {}, `${scene.lugText(from)} — ${scene.lugText(to)}`);
    const element = s("path", { d: curve.d, class: `wire wire-${what} ${classOf(belongs)}` }, title);
    return { what, curve, element, start: a.name };
  });
}

function drawJoints(
  scene: Scene,
  laid: LaidGuard,
  lines: ReturnType<typeof drawLines>,
  steps: readonly Step[],
): SVGElement[] {
  const spots = new JointSpots(laid.lugs.values());
  return scene.joints.map(({ step, do: what, lug, line, belongs }) => {
    const { curve, start } = lines[line]!;
    const { x, y } = spots.place(curve, lug === start);
    const number = step + 1;
    return s(
      "g",
      {
        class: `joint ${classOf(belongs)}`,
        transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`,
        role: "button",
        tabindex: -1,
        "aria-label": `${number}. ${steps[step]!.text}`,
      },
      s("title", {}, `${number}. ${steps[step]!.text}`),
      s("circle", { r: 20, class: "joint-light" }),
      jointSign(what, number),
      s("path", { d: "M6 -12l5 5l9 -12", class: "joint-tick" }),
    );
  });
}

/** Both guards in one drawing, seen from the back, with what stays, what is opened and what is made. @param out whose parts go out */
export function drawRewiring(scene: Scene, steps: readonly Step[], out: Belongs, label: string): RewiringDrawing {
  const laid = layGuard(scene.build, "back");
  const { bodies, captions } = drawParts(laid, ({ name }) => partLook(scene, name));
  const changed = changedParts(scene, laid, out);
  const lines = drawLines(scene, laid);
  const joints = drawJoints(scene, laid, lines, steps);
  const lugs = [...laid.lugs.values()].map((lug) => {
    const part = lug.name.split(".")[0]!;
    const cls = classOf(scene.belongs.get(part));
    return drawLug(lug, laid.labels.get(lug.name), { cls, title: scene.lugText(lug.name), attributes: {} });
  });
  const element = s(
    "svg",
    { viewBox: laid.viewBox, class: "drawing rewiring", role: "group", "aria-label": label },
    s(
      "g",
      {},
      changed.map(({ frame }) => frame),
    ),
    s("g", {}, bodies),
    LINES.map((what) =>
      s(
        "g",
        {},
        lines.filter((line) => line.what === what).map((line) => line.element),
      ),
    ),
    s("g", {}, lugs),
    s(
      "g",
      {},
      captions,
      changed.map(({ word }) => word),
    ),
    s("g", {}, joints),
  );
  return {
    element,
    joints,
    light: (step) => {
      for (const [index, joint] of joints.entries()) joint.classList.toggle("lit", index === step);
      const lit = step === undefined ? undefined : scene.joints[step]!.line;
      for (const [index, line] of lines.entries()) line.element.classList.toggle("lit", index === lit);
    },
    tick: (step, isDone) => joints[step]!.classList.toggle("done", isDone),
  };
}
