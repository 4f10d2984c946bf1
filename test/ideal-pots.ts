import type { Build, Part } from "../src/build-file/schema.ts";

const STRAIGHT: [number, number][] = [
  [0, 0],
  [1, 1],
];

const straightened = (taper: unknown) => (taper === "linear" ? STRAIGHT : taper);

function idealPart(part: Part): Part {
  if (part.kind !== "pot") return part;
  const gangs = part.gangs?.map((gang) => ({ ...gang, taper: straightened(gang.taper), endResistance: 0 }));
  return { ...part, taper: straightened(part.taper), endResistance: 0, ...(gangs ? { gangs } : {}) } as Part;
}

/** A build whose pots are those of a worked example: nothing left at their ends, and linear ones straight from end to end. */
export function withIdealPots(build: Build): Build {
  const parts = Object.fromEntries(Object.entries(build.parts).map(([name, part]) => [name, idealPart(part)]));
  return { ...build, parts };
}
