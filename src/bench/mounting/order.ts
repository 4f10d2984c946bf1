import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { type MountingStep, stepFor } from "./mounting-step.ts";

/** Pots whose case a wire is soldered to. */
function solderedCases(build: Build): string[] {
  const ends = new Set(build.wires.flatMap(({ from, to }) => [from, to]));
  return partsOfKind(build, "pot").flatMap(([name]) => (ends.has(`${name}.case`) ? [name] : []));
}

/** What is done first, and why: filings and magnets, hardware and wire. Common practice, no source. */
export function orderSteps(build: Build): MountingStep[] {
  const fixed = Object.entries(build.parts)
    .filter(([, { kind }]) => kind === "pot" || kind === "switch" || kind === "jack")
    .map(([name]) => name);
  return [
    ...stepFor(
      solderedCases(build),
      "File first, pickups far away",
      "Roughen the backs of the pots before a pickup is on the bench, and wipe pots and bench clean afterwards: filings cling to magnets for ever, creep into an open coil and short it.",
    ),
    ...stepFor(
      fixed,
      "Hardware before wire",
      "Fit pots, switches and jack before the first wire is soldered: a wire made in the hand never fits its place, and a nut turned later twists its joints off. A jack on a plate of its own stays loose until its wires are through.",
    ),
  ];
}
