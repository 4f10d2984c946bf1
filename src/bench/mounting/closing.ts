import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, rawSettings } from "../../build-file/settings.ts";
import { mainPositions } from "../main-positions.ts";
import type { Reading } from "../meter/reading-taker.ts";
import { type AcceptanceReading, type MountingStep, stepFor, stepOfGuard } from "./mounting-step.ts";

function terminals(build: Build, isMeant: (role: string | undefined) => boolean): string[] {
  return partsOfKind(build, "terminal").flatMap(([name, { role }]) => (isMeant(role) ? [name] : []));
}

/** The readings at the jack with every dial at 10, a line for each position of the main switch. */
export function acceptanceReadings(build: Build, readings: readonly Reading[]): AcceptanceReading[] {
  const controls = new Controls(build);
  const wanted = mainPositions(controls).map(({ settings }) => JSON.stringify(rawSettings(controls, settings)));
  const [jack] = partsOfKind(build, "jack")[0]!;
  return readings
    .filter(
      ({ between, sweep, settings }) =>
        sweep === undefined && between[0] === `${jack}.tip` && wanted.includes(JSON.stringify(settings)),
    )
    .map(({ label, low, high, meter }) => ({ label, low, high, ...(meter ? { shows: meter.text } : {}) }));
}

/** Wires, foil and the guard itself. Common practice, no source. */
function layingSteps(build: Build): MountingStep[] {
  const lugs = Object.entries(build.parts).flatMap(([name, { kind }]) =>
    kind === "pot" || kind === "switch" || kind === "jack" ? [name] : [],
  );
  return [
    ...stepFor(
      terminals(build, (role) => role === "claw"),
      "Spring claw",
      "It takes a bigger iron and more time than any lug: cover the finish around it, and wear eye protection, for its springs are under tension. Let it cool before a string is tuned.",
    ),
    ...stepFor(
      [...partsOfKind(build, "jack").map(([name]) => name), ...terminals(build, (role) => role !== "ground")],
      "Wires that leave the guard",
      "Lead them through their channels, and leave enough loose under the guard to turn it over again.",
    ),
    ...(terminals(build, (role) => role === "shield").length > 0
      ? stepFor(
          lugs,
          "No hot lug on the foil",
          "Look where each lug comes to lie; tape the foil or sleeve the lug where the two can meet. Measure tip to sleeve before the guard is laid down and after: it must not change.",
        )
      : []),
    stepOfGuard(
      "No wire pinched",
      "Look along the whole edge, and under pickups and switches: no wire lies between guard and body.",
    ),
    stepOfGuard(
      "The guard lies flat",
      "It rests all round of its own weight. Where it rocks, something is under it: lift it and look; screws must not press it down.",
    ),
    stepOfGuard(
      "Guard screws by hand",
      "Turn each backwards until it drops into its old thread, start all of them by hand, then tighten crosswise, no further than flush.",
    ),
  ];
}

/** What goes on the face, last of all. Common practice, no source. */
function faceSteps(build: Build): MountingStep[] {
  const shafts = Object.entries(build.parts).flatMap(([name, part]) =>
    part.kind === "pot" || (part.kind === "switch" && part.type === "rotary") ? [name] : [],
  );
  const levers = partsOfKind(build, "switch").flatMap(([name, { type }]) => (type?.startsWith("lever") ? [name] : []));
  return [
    ...stepFor(
      shafts,
      "Knobs",
      "Turn the shaft to its counter-clockwise end and set the knob with its lowest mark at the pointer. Press it on by hand, or do up its screw; never pry a tight one off against the guard.",
    ),
    ...stepFor(levers, "Switch tip", "Press it on by hand, square to the slot; it moves through every position."),
  ];
}

/** From the last joint to a guard that is closed and known to be right. Common practice, no source. */
export function closingSteps(build: Build, readings: readonly Reading[], celsius: number): MountingStep[] {
  return [
    ...layingSteps(build),
    ...faceSteps(build),
    {
      title: "Acceptance readings",
      text: `With the guard closed and nothing plugged in, every dial at 10, measure from tip to sleeve and note what the meter shows, with the date: the next fault is found by what has changed since. The figures are for coils at ${celsius} °C; copper reads 0.4 % more for every degree above.`,
      parts: partsOfKind(build, "jack").map(([name]) => name),
      readings: acceptanceReadings(build, readings),
    },
  ];
}
