import { lugSpots } from "../../../build-file/bodies/lug-spots.ts";
import type { Part } from "../../../build-file/schema.ts";
import type { Point } from "../point.ts";
import { coilCentres } from "./pickup-size.ts";

/** One of the texts that a part has beside its lugs' names. */
export interface PartText extends Point {
  readonly what: "name" | "value" | "shaft" | "coil" | "off";
  /** Of a pickup, where the text is about one coil. */
  readonly coil?: string;
}

interface Reach {
  /** The highest of body and lugs above the part's middle. */
  readonly top: number;
  /** Of the body below it. */
  readonly bottom: number;
}

const LINE = 17;

function potTexts(part: Extract<Part, { kind: "pot" }>, { top }: Reach): PartText[] {
  if (!part.drives)
    return [
      { what: "value", x: 0, y: -17 },
      { what: "name", x: 0, y: top + 14 },
    ];
  const behind = [...lugSpots(part)].filter(([local]) => local.startsWith("s."));
  const isSwitchSmall = behind.length <= 6;
  return [
    { what: "value", x: 0, y: isSwitchSmall ? -52 : -30 },
    { what: "shaft", x: 0, y: top + 20 },
    { what: "name", x: 0, y: top + 20 + LINE },
  ];
}

/** Where a part's texts have their middle, the part not turned. */
export function textsOf(part: Part, reach: Reach): PartText[] {
  switch (part.kind) {
    case "pot":
      return potTexts(part, reach);
    case "pickup":
      return [
        { what: "name", x: 0, y: -reach.bottom - 18 },
        ...coilCentres(part).flatMap(({ coil, x }) => [
          { what: "coil", coil, x, y: 0 } as const,
          { what: "off", coil, x, y: -LINE } as const,
        ]),
      ];
    case "switch":
      return [{ what: "name", x: 0, y: reach.top + 24 }];
    case "cap":
    case "resistor":
      return [{ what: "value", x: 0, y: 27 }];
    case "jack":
      return [{ what: "name", x: 0, y: reach.top + 14 }];
    case "terminal":
      return [{ what: "name", x: 0, y: -22 }];
  }
}
