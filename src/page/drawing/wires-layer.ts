import { parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { wireEnds } from "../describe/wire-ends.ts";
import { s } from "../dom/element.ts";
import type { BuildSource, Reading } from "../state/reading.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { contactLine } from "./bodies/contact-line.ts";
import type { LaidGuard } from "./laid-guard.ts";
import type { LivePath } from "./live-path.ts";
import { closedContacts, type Step } from "./lug-graph.ts";
import { facingIn } from "./view.ts";
import { freeCurve } from "./wire-curves.ts";

function arrow({ x, y }: { x: number; y: number }, angle: number): SVGElement {
  return s("path", { d: "M-9 -8L12 0L-9 8Z", transform: `translate(${x} ${y}) rotate(${angle})`, class: "arrow" });
}

/** Which way, if any, a wire of the build file carries the signal. */
function wireUse(path: LivePath, wire: number, from: string): { cls: string; forwards: boolean } {
  const hot = path.hot.find((step) => step.wire === wire);
  if (hot) return { cls: "wire-live", forwards: hot.from === from };
  if (path.back.some((step) => step.wire === wire)) return { cls: "wire-return", forwards: true };
  const net = path.live.nets.get(from);
  if (net === path.live.sleeveNet) return { cls: "wire-ground", forwards: true };
  const shaped = path.live.elements.some(({ ends }) => ends.some((end) => path.live.nets.get(end) === net));
  return { cls: shaped ? "wire-side" : "wire-idle", forwards: true };
}

function isBare(wire: BuildSource["wires"][number]): boolean {
  return !Array.isArray(wire) && (wire as { how?: unknown }).how === "bus wire";
}

const ORDER = ["wire-idle", "wire-ground", "wire-side", "wire-return", "wire-live"];

/** Every wire, the live ones on top with arrows that point to the jack. */
export function drawWires(
  source: BuildSource,
  path: LivePath,
  { find, routes }: LaidGuard,
  { words }: LugSpeech,
): SVGElement[] {
  const drawn = source.wires.flatMap((wire, index) => {
    const ends = wireEnds(wire);
    const [from, curve] = [find(ends[0]), routes[index]];
    if (!from || !curve) return [];
    const { cls, forwards } = wireUse(path, index, from.name);
    const net = String(path.live.nets.get(from.name));
    const line = s("path", {
      d: curve.d,
      class: `wire ${cls} ${isBare(wire) ? "wire-bus" : ""}`.trim(),
      "data-net": net,
      "data-line": index,
    });
    // Wider than the line, so that a thumb finds it.
    const reach = s(
      "path",
      { d: curve.d, class: "wire-reach", "data-wire": index },
      s("title", {}, ends.map((end) => words.of(end)).join(" — ")),
    );
    const head = cls === "wire-live" ? [arrow(curve.middle, curve.angle + (forwards ? 0 : 180))] : [];
    return [{ cls, elements: [line, ...head, reach] }];
  });
  return drawn.sort((a, b) => ORDER.indexOf(a.cls) - ORDER.indexOf(b.cls)).flatMap((each) => each.elements);
}

function onWay(steps: readonly Step[], from: string, to: string): boolean {
  return steps.some((step) => (step.from === from && step.to === to) || (step.from === to && step.to === from));
}

/** What lies within parts: closed contacts as bars, and the ways that the signal takes through pots and other parts. */
export function drawInside(
  { build, controls }: Reading,
  raw: RawSettings,
  path: LivePath,
  { find, lugs }: LaidGuard,
): SVGElement[] {
  const contacts = closedContacts(build, parseSettings(controls, raw)).flatMap(({ from, to }) => {
    const [a, b] = [find(from), find(to)];
    if (!a || !b) return [];
    const live = onWay(path.hot, from, to) ? "contact-live" : "";
    return [s("path", { d: contactLine(a, b, lugs.values()), class: `contact ${live}` })];
  });
  const through = path.hot
    .filter((step) => step.kind === "through" && step.element?.coil === undefined)
    .flatMap((step) => {
      const [a, b] = [find(step.from), find(step.to)];
      return a && b
        ? [
            s("path", {
              d: freeCurve(facingIn(a), facingIn(b)).d,
              class: "through-live",
            }),
          ]
        : [];
    });
  return [...contacts, ...through];
}
