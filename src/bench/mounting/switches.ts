import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, PartOf } from "../../build-file/schema.ts";
import { firstContact } from "./first-contact.ts";
import { type MountingStep, stepFor } from "./mounting-step.ts";

type Switch = PartOf<"switch">;

function positionOne(build: Build, name: string, where: string): string {
  const contact = firstContact(build, name);
  return contact === undefined
    ? ""
    : ` ${where}, and find with a meter, before any wire is on it, what that joins: ${contact}. Mark them, and go on through the other positions.`;
}

/** A step for every switch of a sort, each with the lugs of its own first position. */
function perSwitch(
  build: Build,
  isMeant: (type: Switch["type"]) => boolean,
  title: string,
  text: (name: string, part: Switch) => string,
): MountingStep[] {
  return partsOfKind(build, "switch")
    .filter(([, { type }]) => isMeant(type))
    .flatMap(([name, part]) => stepFor([name], title, text(name, part)));
}

const isLever = (type: Switch["type"]) => type?.startsWith("lever") === true;
const isSmall = (type: Switch["type"]) => type === "spdt" || type?.startsWith("dpdt") === true;

/** How switches sit in the guard, and which end is position 1. Common practice, no source. */
export function switchSteps(build: Build): MountingStep[] {
  const levers = partsOfKind(build, "switch").flatMap(([name, { type }]) => (isLever(type) ? [name] : []));
  return [
    ...perSwitch(
      build,
      isLever,
      "Lever switch: which way round",
      (name) =>
        `It fits its slot either way round, and its spring takes room on one side: choose the side where it touches neither wall, foil nor pickup.${positionOne(build, name, "Position 1 is the lever's end nearest the bridge: put it there")}`,
    ),
    ...stepFor(
      levers,
      "Lever switch: two screws",
      "Start both by hand before either is tightened; one that binds after a turn has another thread. The lever moves free of the slot's ends. Its tip comes last.",
    ),
    ...perSwitch(
      build,
      (type) => type === "toggle-3",
      "Toggle",
      (name) =>
        `Set its height with the nut or washers inside, then tighten the one on the face with a cloth round it; its leaves stand clear of walls and foil.${positionOne(build, name, "Position 1 is towards the bridge: push it there")}`,
    ),
    ...perSwitch(
      build,
      isSmall,
      "Small switch",
      (name) =>
        `Toothed washer and height nut inside, flat nut on the face, started by hand; hold its body while you tighten.${positionOne(build, name, "Put it down")}`,
    ),
    ...perSwitch(
      build,
      (type) => type === "rotary",
      "Rotary switch",
      (name, { throws }) =>
        `Set its stop ring to ${throws ?? 2} positions before it goes in, put the locating pin into its hole or clip it off, toothed washer inside.${positionOne(build, name, "Turn it fully counter-clockwise")}`,
    ),
  ];
}
