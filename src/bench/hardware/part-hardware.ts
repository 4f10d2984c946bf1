import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import { forEach, type HardwareLine } from "./hardware-line.ts";

const SCREWS_A_PICKUP = 2;
const SCREWS_A_LEVER = 2;

function named(build: Build, isMeant: (part: Part) => boolean): string[] {
  return Object.entries(build.parts).flatMap(([name, part]) => (isMeant(part) ? [name] : []));
}

/** Two height screws a pickup, each with its spring or sleeve. Common practice, no source. */
export function pickupHardware(build: Build): HardwareLine[] {
  const pickups = partsOfKind(build, "pickup").map(([name]) => name);
  return [
    ...forEach(
      pickups,
      SCREWS_A_PICKUP,
      "pickup height screw",
      "Two a pickup is usual; count the holes in its ears. Threads differ: size each by hand.",
    ),
    ...forEach(
      pickups,
      SCREWS_A_PICKUP,
      "spring or rubber sleeve for a height screw",
      "One a screw; a sleeve is cut to length.",
    ),
  ];
}

/** A nut, a toothed and a flat washer hold whatever has a bushing. Common practice, no source. */
function bushingHardware(build: Build): HardwareLine[] {
  const isBushed = (part: Part) =>
    part.kind === "pot" || part.kind === "jack" || (part.kind === "switch" && !part.type?.startsWith("lever"));
  const small = (part: Part) =>
    part.kind === "switch" && (part.type === "toggle-3" || part.type === "spdt" || part.type?.startsWith("dpdt"));
  const bushed = named(build, isBushed);
  return [
    ...forEach(bushed, 1, "nut", "Usually in the bag with its part; threads differ, so start each by hand."),
    ...forEach(bushed, 1, "toothed washer", "Inside, between part and guard."),
    ...forEach(bushed, 1, "flat washer", "On the face, under the nut."),
    ...forEach(
      named(build, (part) => small(part) === true),
      1,
      "second nut",
      "Inside, to set the height.",
    ),
    ...forEach(
      named(build, (part) => part.kind === "pot" && part.drives !== undefined),
      1,
      "spacer ring or second nut under a push-pull",
      "Only where its body is deeper than the cavity: measure first.",
    ),
  ];
}

const KNOB_NOTE =
  "Look at the shaft first: a split one takes a knob with as many teeth, a solid one a knob with a set screw.";

/** What is turned, pushed and seen on the face. Common practice, no source. */
export function controlHardware(build: Build): HardwareLine[] {
  const isTurned = (part: Part) => part.kind === "pot" || (part.kind === "switch" && part.type === "rotary");
  const levers = named(build, (part) => part.kind === "switch" && part.type?.startsWith("lever") === true);
  const toggles = named(build, (part) => part.kind === "switch" && part.type === "toggle-3");
  const pulled = named(build, (part) => part.kind === "pot" && part.drives !== undefined);
  const pull = pulled.length > 0 ? " A push-pull lifts by its knob: one that sits tight, or has a set screw." : "";
  return [
    ...bushingHardware(build),
    ...forEach(named(build, isTurned), 1, "knob", KNOB_NOTE + pull),
    ...forEach(
      levers,
      SCREWS_A_LEVER,
      "screw for the lever switch",
      "It must suit the switch's frame: try it by hand.",
    ),
    ...forEach(levers, 1, "tip for the lever", "Slots differ in width: try it on before buying another."),
    ...forEach(toggles, 1, "tip for the toggle", "It screws or pushes on."),
  ];
}
