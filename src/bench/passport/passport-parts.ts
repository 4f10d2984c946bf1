import type { Build, Part } from "../../build-file/schema.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { capitalised } from "../../english.ts";
import { describePart } from "../parts/describe-part.ts";

export interface PassportPart {
  readonly part: string;
  /** "Lower tone". */
  readonly name: string;
  /** "250 kΩ pot, audio taper (A), measured 238 kΩ". */
  readonly what: string;
}

function measuredWords(part: Part): string[] {
  if (part.kind !== "pot") return [];
  const tracks = [part.measured, part.gangs?.[0]?.measured].filter((ohms) => ohms !== undefined);
  return tracks.length === 0
    ? []
    : [`measured ${tracks.map((ohms) => showQuantity(ohms, "resistance")).join(" and ")}`];
}

/** Every part but the points of the guitar itself, as a shop would call it. */
export function passportParts(build: Build): PassportPart[] {
  const words = partWords(build.parts);
  return Object.entries(build.parts).flatMap(([name, part]) => {
    if (part.kind === "terminal") return [];
    const what = [describePart(part).what, ...measuredWords(part)].join(", ");
    return [{ part: name, name: capitalised(words.get(name) ?? name), what }];
  });
}
