import type { Part, PartOf } from "../schema.ts";
import { switchTable } from "../switch-types.ts";
import { jackBody, potBody, shaftBody, switchBody } from "./bodies-of.ts";
import type { Outline } from "./body-kind.ts";
import { jackOutline, jackSpots } from "./jack-bodies.ts";
import { ONE_LUG, pickupSpots, TWO_LEGS } from "./legged-spots.ts";
import { leverOutline, leverSpots } from "./lever-bodies.ts";
import { blockOutline, blockSpots, foundSpots, ringOutline, ringSpots, rowsOutline } from "./plain-switch-bodies.ts";
import { potOutline, potSpots } from "./pot-bodies.ts";
import { smallSwitchOutline, smallSwitchSpots, toggleOutline, toggleSpots } from "./small-switch-bodies.ts";
import { mm, type Spots } from "./spot.ts";

type Switch = PartOf<"switch">;

const THROWS = { "lever-3": 3, "lever-5": 3, "lever-5-four-pole": 5 } as const;
const POLES = { spdt: ["A"], dpdt: ["A", "B"], "dpdt-on-on-on": ["A", "B"] } as const;

function rotaryOf(part: Switch) {
  const { lugs } = switchTable(part);
  return { poles: [...new Set(lugs.map((lug) => lug[0]!))], throws: part.throws ?? 2 };
}

function switchSpots(part: Switch): Spots {
  if (part.lugRows) return foundSpots(part.lugRows);
  const { lugs } = switchTable(part);
  if (part.positions || part.type === undefined) return blockSpots(lugs);
  const body = switchBody(part);
  switch (part.type) {
    case "toggle-3":
      return new Map([...toggleSpots(body)].filter(([lug]) => lugs.includes(lug)));
    case "rotary":
      return ringSpots(rotaryOf(part));
    case "spdt":
    case "dpdt":
    case "dpdt-on-on-on":
      return smallSwitchSpots(body, POLES[part.type]);
    default:
      return leverSpots(body, THROWS[part.type]);
  }
}

function switchOutline(part: Switch): Outline {
  if (part.lugRows) return rowsOutline(part.lugRows);
  if (part.positions || part.type === undefined) return blockOutline(switchTable(part).lugs);
  const body = switchBody(part);
  switch (part.type) {
    case "toggle-3":
      return toggleOutline(body);
    case "rotary":
      return ringOutline(rotaryOf(part));
    case "spdt":
    case "dpdt":
    case "dpdt-on-on-on":
      return smallSwitchOutline(body, POLES[part.type].length);
    default:
      return leverOutline(body);
  }
}

/** Where the lugs of a part lie in its own frame, by their names within it. A terminal's one lug is named "". */
export function lugSpots(part: Part): Spots {
  switch (part.kind) {
    case "pickup":
      return pickupSpots(part);
    case "pot":
      return potSpots(part, potBody(part), shaftBody(part));
    case "switch":
      return switchSpots(part);
    case "jack": {
      const { ring, ...mono } = Object.fromEntries(jackSpots(jackBody(part)));
      return new Map(Object.entries(part.stereo ? { ...mono, ring: ring! } : mono));
    }
    case "cap":
    case "resistor":
      return TWO_LEGS;
    case "terminal":
      return ONE_LUG;
  }
}

const SMALL: Outline = { form: "box", width: mm(6), height: mm(5) };

/** The part's body about its middle, in metres. */
export function outlineOf(part: Part): Outline {
  switch (part.kind) {
    case "pickup":
      return { form: "box", width: mm(22 + 18 * (Object.keys(part.coils).length - 1)), height: mm(64) };
    case "pot":
      return potOutline(potBody(part));
    case "switch":
      return switchOutline(part);
    case "jack":
      return jackOutline(jackBody(part));
    case "cap":
    case "resistor":
    case "terminal":
      return SMALL;
  }
}
