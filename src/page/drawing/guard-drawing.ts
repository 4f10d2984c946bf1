import { LugTable } from "../../build-file/lugs.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import type { FindingAnswer } from "../../contract/bench/bench.ts";
import { replaceContent, s } from "../dom/element.ts";
import { partLabel, positionNames } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import { arrangeParts, type Placed } from "./arrange.ts";
import { drawFindingMarks } from "./finding-marks.ts";
import { emptyOverlay } from "./hand/overlay.ts";
import type { LivePath } from "./live-path.ts";
import { drawLug } from "./lugs-layer.ts";
import { type BodyState, partBody } from "./part-bodies.ts";
import { type SeenLug, type Side, seenFrom, seenLug } from "./view.ts";
import { drawInside, drawWires } from "./wires-layer.ts";

export interface DrawingInput {
  readonly reading: Reading;
  readonly settings: RawSettings;
  readonly path: LivePath;
  readonly side: Side;
}

export interface GuardDrawing {
  readonly input: DrawingInput;
  readonly element: SVGSVGElement;
  readonly placed: readonly Placed[];
  readonly lugs: ReadonlyMap<string, SeenLug>;
  /** For what shows while something is in hand. */
  readonly overlay: SVGGElement;
  /** A lug by any of its names. */
  find(name: string): SeenLug | undefined;
  /** Marks where something is wrong; the drawing under the marks stays. */
  mark(findings: readonly FindingAnswer[]): void;
}

const MARGIN = 36;

export function seenLugs(placed: readonly Placed[], side: Side): Map<string, SeenLug> {
  return new Map(
    placed.flatMap(({ name, shape, centre }) =>
      shape.lugs.map((spot): [string, SeenLug] => {
        const lug = spot.local === "" ? name : `${name}.${spot.local}`;
        return [lug, seenLug(side, centre, lug, spot)];
      }),
    ),
  );
}

function viewBox(placed: readonly Placed[], side: Side): string {
  const corners = placed.flatMap(({ centre, shape }) => {
    const { x, y } = seenFrom(side, centre);
    return [
      [x - shape.width / 2, y - shape.down],
      [x + shape.width / 2, y + shape.up],
    ] as const;
  });
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [left, top] = [Math.min(...xs) - MARGIN, Math.min(...ys) - MARGIN];
  return [left, top, Math.max(...xs) + MARGIN - left, Math.max(...ys) + MARGIN - top].map(Math.round).join(" ");
}

function bodyState({ reading, settings, path, side }: DrawingInput, name: string): BodyState {
  const part = reading.build.parts[name]!;
  const shaft = reading.controls.switches.find((each) => each.part === name && each.onShaft);
  const joinedInside = part.kind === "pickup" && part.conductors === 2;
  return {
    settings,
    label: partLabel(reading.build, name),
    shaft: shaft && String(settings[shaft.name] ?? positionNames(shaft)[0]),
    mirror: side === "front" ? -1 : 1,
    isCoilLive: (coil) =>
      path.description.coils.some((each) => each.pickup === name && (joinedInside || each.coil === coil)),
  };
}

const PASSIVE = ["jack", "terminal"];

function isDead({ path }: DrawingInput, { name, part }: Placed): boolean {
  if (PASSIVE.includes(part.kind)) return false;
  if (part.kind === "pickup") return !path.description.coils.some((coil) => coil.pickup === name);
  if (part.kind === "switch") return false;
  return !path.live.elements.some((element) => element.part === name);
}

/** The guard as a drawing: parts, wires and the live path, with room for marks. */
export function drawGuard(input: DrawingInput): GuardDrawing {
  const { reading, settings, path, side } = input;
  const placed = arrangeParts(reading.build);
  const lugs = seenLugs(placed, side);
  const table = new LugTable(reading.build.parts);
  const find = (name: string) => {
    const index = table.find(name);
    return index === undefined ? undefined : lugs.get(table.nameAt(index));
  };
  const bodies = placed.map((each) =>
    s(
      "g",
      {
        class: isDead(input, each) ? `part part-${each.part.kind} part-dead` : `part part-${each.part.kind}`,
        "data-part": each.name,
        role: "button",
        tabindex: -1,
        "aria-label": `${partLabel(reading.build, each.name)}: move or turn`,
      },
      partBody(each, seenFrom(side, each.centre), bodyState(input, each.name)),
    ),
  );
  const captions = bodies.map((body) =>
    s("g", { class: body.classList.contains("part-dead") ? "part-dead" : "", "data-caption": body.dataset.part }, [
      ...body.querySelectorAll("text"),
    ]),
  );
  const kindOf = (lug: SeenLug) => reading.build.parts[lug.name.split(".")[0]!]!.kind;
  const speech = speechOf(reading);
  const marks = s("g", {});
  const overlay = emptyOverlay();
  const element = s(
    "svg",
    { viewBox: viewBox(placed, side), class: "guard", role: "group", "aria-label": "Wiring of the guard" },
    s("g", {}, bodies),
    s("g", {}, drawInside(reading, settings, path, find)),
    s("g", {}, drawWires(reading.source, path, find, speech)),
    s(
      "g",
      {},
      [...lugs.values()].map((lug) => drawLug(lug, path, kindOf(lug) !== "cap" && kindOf(lug) !== "resistor", speech)),
    ),
    // Names lie over the wires, or they could not be read where many cross.
    s("g", {}, captions),
    marks,
    overlay,
  );
  const mark = (findings: readonly FindingAnswer[]) => replaceContent(marks, drawFindingMarks(findings, find, speech));
  return { input, element, placed, lugs, overlay, find, mark };
}
