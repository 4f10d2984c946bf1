import type { Build, Part } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { type Preset, presetOf } from "./figures.ts";
import { boxOutline, middleBox, type Outline, roundOutline, type Seat, seated } from "./geometry/outline.ts";
import type { Measures, PartMeasures, ShapeSaid, SideName, Standout } from "./measures.ts";
import { partsInside, seatOf } from "./seats.ts";

export const ASPECTS = ["body", "ears", "lugs", "cable"] as const;

/** A piece of a part as it lies in the guard's frame. */
export interface PlacedShape {
  readonly what: (typeof ASPECTS)[number];
  readonly outline: Outline;
}

export interface PlacedPart {
  readonly name: string;
  /** What a person calls it. */
  readonly words: string;
  readonly part: Part;
  readonly measures: PartMeasures;
  readonly seat: Seat | undefined;
  readonly preset: Preset | undefined;
  /** None where it has no place or no outline. */
  readonly shapes: readonly PlacedShape[];
}

const mm = (millimetres: number) => millimetres / 1000;

function presetShape(shape: Preset["shapes"][number]): Outline {
  return "round" in shape ? roundOutline(mm(shape.round)) : middleBox(mm(shape.box[0]), mm(shape.box[1]));
}

/** The shapes that somebody said, about the part's middle. */
export function shapesSaid(said: ShapeSaid): readonly Outline[] {
  if (typeof said === "string") return presetOf(said).shapes.map(presetShape);
  if ("round" in said) return [roundOutline(said.round)];
  return "box" in said ? [middleBox(...said.box)] : [said];
}

function standout({ side, reach, width }: Standout): Outline {
  const half = width / 2;
  const boxes: Readonly<Record<SideName, Outline>> = {
    neck: boxOutline([0, -half], [reach, half]),
    bridge: boxOutline([-reach, -half], [0, half]),
    treble: boxOutline([-half, 0], [half, reach]),
    bass: boxOutline([-half, -reach], [half, 0]),
  };
  return boxes[side];
}

function ownShapes({ outline, ears, lugs, cable }: PartMeasures): PlacedShape[] {
  return [
    ...(outline === undefined ? [] : shapesSaid(outline).map((shape) => ({ what: "body" as const, outline: shape }))),
    ...(ears ? [{ what: "ears" as const, outline: middleBox(...ears) }] : []),
    ...(lugs ? [{ what: "lugs" as const, outline: standout(lugs) }] : []),
    ...(cable ? [{ what: "cable" as const, outline: standout(cable) }] : []),
  ];
}

/** Every part that fills a cavity, with its shapes where it sits. */
export function placedParts(build: Build, measures: Measures): PlacedPart[] {
  const words = partWords(build.parts);
  return partsInside(build, measures).map(([name, part]) => {
    const own = measures.parts[name] ?? {};
    const seat = seatOf(build, [name, part], measures);
    return {
      name,
      words: words.get(name)!,
      part,
      measures: own,
      seat,
      preset: typeof own.outline === "string" ? presetOf(own.outline) : undefined,
      shapes: seat ? ownShapes(own).map(({ what, outline }) => ({ what, outline: seated(outline, seat) })) : [],
    };
  });
}
