import { hasCoilLeads } from "../../build-file/lug-names.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Pickup } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { listed } from "../../english.ts";
import { pickupsToPart } from "../audit/metal-on-lead.ts";
import { type MountingStep, stepFor } from "./mounting-step.ts";

type Named = readonly [name: string, pickup: Pickup];

/** Of two coils side by side, the one nearer the bridge. */
function coilAtBridge(words: string, { coils }: Pickup): string[] {
  const [first, second] = Object.entries(coils);
  const [a, b] = [first?.[1].distance, second?.[1].distance];
  if (a === undefined || b === undefined || a === b) return [];
  return [`the ${(a < b ? first : second)![0]} coil of the ${words}`];
}

function whichWayRound({ parts }: Build, pickups: readonly Named[]): string {
  const words = partWords(parts);
  const nearest = pickups.flatMap(([name, pickup]) => coilAtBridge(words.get(name)!, pickup));
  const coils = nearest.length === 0 ? "" : ` Nearer the bridge: ${listed(nearest)}.`;
  return `Lay each so that its ears meet the guard's holes and its cable leaves on the side of the controls, clear of the screws.${coils}`;
}

const hasDrain = ([name, pickup]: Named, ends: ReadonlySet<string>) =>
  hasCoilLeads(pickup) && ends.has(`${name}.shield`);

/** How pickups are hung, and what spoils one. Common practice, no source. */
export function pickupSteps(build: Build): MountingStep[] {
  const pickups = partsOfKind(build, "pickup");
  const names = pickups.map(([name]) => name);
  const ends = new Set(build.wires.flatMap(({ from, to }) => [from, to]));
  const nameOf = ([name]: Named) => name;
  return [
    ...stepFor(
      pickups.filter(([, { metal }]) => metal !== "cover").map(nameOf),
      "Cover open coils",
      "Leave the cover on, or lay tape over the windings, before a screwdriver comes near: the magnet snatches it, and a tip that jumps tears the wire. Hold it back with the other hand.",
    ),
    ...stepFor(
      pickupsToPart(build),
      "Part the metal from the ground lead",
      "That lead goes to a switch or to the hot here, and most such pickups have their cover or baseplate tied to it. Cut or unsolder that small jumper, never an end of the winding, and solder a wire of its own to the metal; with the other end still free, the meter must read open between the metal and either lead.",
    ),
    ...stepFor(names, "Pickups: which way round", whichWayRound(build, pickups)),
    ...stepFor(
      names,
      "Wax in a hole",
      "It shows that the coil is potted against howling. Pick the hole free with a wooden stick; never scrape towards the coil, and leave all other wax where it is.",
    ),
    ...stepFor(
      names,
      "Height screws by hand first",
      "Size every screw by turning it into its ear with your fingers, the spare ones of a kit first: one that binds has another thread, and forcing it strips the ear.",
    ),
    ...stepFor(
      names,
      "Springs or sleeves",
      "One over each height screw, between guard and ear. A straight spring goes either way; a conical one with its wide end to the guard. Cut a pickup's rubber sleeves to one length, long enough to press still with the pickup at its lowest; rubber hardens and sags with the years, so renew it when a pickup rattles or sinks.",
    ),
    ...stepFor(
      pickups.filter((named) => hasDrain(named, ends)).map(nameOf),
      "Bare wire in the cable",
      "The bare wire beside the four leads comes with the cable and grounds the metal: slip a sleeve over it up to its joint, so that it touches no lug on its way.",
    ),
  ];
}
