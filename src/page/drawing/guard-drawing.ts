import type { RawSettings } from "../../build-file/settings.ts";
import type { FindingAnswer } from "../../contract/bench/bench.ts";
import { replaceContent, s } from "../dom/element.ts";
import { partLabel, positionNames } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import type { Placed } from "./arrange.ts";
import { dialText } from "./bodies/part-words.ts";
import { drawFindingMarks } from "./finding-marks.ts";
import { emptyOverlay } from "./hand/overlay.ts";
import { layGuard } from "./laid-guard.ts";
import type { LivePath } from "./live-path.ts";
import { drawLug, liveLug } from "./lugs-layer.ts";
import { drawParts, type PartLook } from "./parts-layer.ts";
import type { SeenLug, Side } from "./view.ts";
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

function captionOf({ reading: { build }, settings }: DrawingInput, { name, part }: Placed): string {
  const label = partLabel(build, name);
  return part.kind === "switch" ? `${label} at ${settings[name] ?? 1}` : label;
}

function bodyState(input: DrawingInput, placed: Placed): PartLook["state"] {
  const { reading, settings, path } = input;
  const { name, part } = placed;
  const shaft = reading.controls.switches.find((each) => each.part === name && each.onShaft);
  const joinedInside = part.kind === "pickup" && part.conductors === 2;
  const isLive = (coil: string) =>
    path.description.coils.some((each) => each.pickup === name && (joinedInside || each.coil === coil));
  return {
    label: captionOf(input, placed),
    value: part.kind === "pot" ? dialText(part, settings[name]) : "",
    shaft: shaft && String(settings[shaft.name] ?? positionNames(shaft)[0]),
    coil: (coil) => (isLive(coil) ? "live" : "dead"),
  };
}

const PASSIVE = ["jack", "terminal"];

function isDead({ path }: DrawingInput, { name, part }: Placed): boolean {
  if (PASSIVE.includes(part.kind)) return false;
  if (part.kind === "pickup") return !path.description.coils.some((coil) => coil.pickup === name);
  if (part.kind === "switch") return false;
  return !path.live.elements.some((element) => element.part === name);
}

function partLook(input: DrawingInput, placed: Placed): PartLook {
  const { name } = placed;
  return {
    cls: isDead(input, placed) ? "part-dead" : "",
    state: bodyState(input, placed),
    body: {
      "data-part": name,
      role: "button",
      tabindex: -1,
      "aria-label": `${partLabel(input.reading.build, name)}: move or turn`,
    },
    caption: { "data-caption": name },
  };
}

/** The guard as a drawing: parts, wires and the live path, with room for marks. */
export function drawGuard(input: DrawingInput): GuardDrawing {
  const { reading, settings, path, side } = input;
  const laid = layGuard(reading.build, side);
  const { placed, lugs, find } = laid;
  const { bodies, captions } = drawParts(laid, (each) => partLook(input, each));
  const speech = speechOf(reading);
  const marks = s("g", {});
  const overlay = emptyOverlay();
  const element = s(
    "svg",
    { viewBox: laid.viewBox, class: "drawing guard", role: "group", "aria-label": "Wiring of the guard" },
    s("g", {}, bodies),
    s("g", {}, drawInside(reading, settings, path, laid)),
    s("g", {}, drawWires(reading.source, path, laid, speech)),
    s(
      "g",
      {},
      [...lugs.values()].map((lug) => drawLug(lug, laid.labels.get(lug.name), liveLug(lug.name, path, speech))),
    ),
    s("g", {}, captions),
    marks,
    overlay,
  );
  const mark = (findings: readonly FindingAnswer[]) => replaceContent(marks, drawFindingMarks(findings, find, speech));
  return { input, element, placed, lugs, overlay, find, mark };
}
