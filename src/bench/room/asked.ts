import type { Measures } from "./measures.ts";
import type { PlacedPart } from "./placed-parts.ts";

/** Something to measure, and how. */
export interface Asked {
  /** A part's or a cavity's name, "guard" or "strings". */
  readonly of: string;
  readonly what: string;
  readonly how: string;
}

const ask = (of: string, what: string, how: string): Asked => ({ of, what, how });

function ofPart({ name, part, seat, shapes, measures }: PlacedPart): Asked[] {
  const isPickup = part.kind === "pickup";
  const leads = isPickup
    ? ask(name, "cable", "from its middle to where the cable turns away, its width and the side it leaves on")
    : ask(name, "lugs", "from its middle to the end of its lugs, over how wide, and on which side");
  return [
    ...(seat ? [] : [ask(name, "place", "where its middle sits: from the bridge, and from the centre line")]),
    ...(shapes.length > 0 || measures.outline
      ? []
      : [ask(name, "outline", "the outline of what lies under the guard")]),
    ...(measures.depth === undefined ? [ask(name, "depth", "from the guard's underside to its lowest point")] : []),
    ...(isPickup && !measures.ears ? [ask(name, "ears", "from end to end, ears and base plate included")] : []),
    ...(measures.lugs || measures.cable ? [] : [leads]),
  ];
}

/** What is still to be measured before nothing is left open. */
export function askedOf(parts: readonly PlacedPart[], { cavities, strings, guard }: Measures): Asked[] {
  const hasPickups = parts.some(({ part }) => part.kind === "pickup");
  const hasThreads = parts.some(({ part }) => part.kind === "pot");
  return [
    ...(cavities.length === 0
      ? [ask("body", "cavity", "the line of each hole in the body that the guard covers")]
      : []),
    ...cavities.flatMap(({ name, depth }) =>
      depth === undefined ? [ask(name, "depth", "from the face that the guard lies on to its floor")] : [],
    ),
    ...parts.flatMap(ofPart),
    ...(hasPickups && !strings
      ? [ask("strings", "spacing", "from the first string to the last, at the nut and at the bridge")]
      : []),
    ...(hasThreads && guard.thickness === undefined ? [ask("guard", "thickness", "of its plate")] : []),
    ...(hasThreads && guard.stack === undefined ? [ask("guard", "stack", "nut and washers, one on the other")] : []),
    ...(guard.screws?.length && guard.screwDiameter === undefined
      ? [ask("guard", "screwDiameter", "of the screws' holes in the wood")]
      : []),
  ];
}
