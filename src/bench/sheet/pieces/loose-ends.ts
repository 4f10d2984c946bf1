import type { Build } from "../../../build-file/schema.ts";

export function partOf(lug: string): string {
  return lug.split(".", 1)[0]!;
}

/** An end that hangs from its part until it is soldered to something: a pickup's lead, or a cap's or resistor's leg. */
export type LooseMeans = "lead" | "leg";

/** How a lug hangs from its part, or undefined where it is fixed and takes other ends. */
export function loosenessOf(build: Build, lug: string): LooseMeans | undefined {
  switch (build.parts[partOf(lug)]?.kind) {
    case "pickup":
      return "lead";
    case "cap":
    case "resistor":
      return "leg";
    default:
      return undefined;
  }
}

/** Whether a lug is the back of a pot, which takes a big joint and much heat. */
export function isCase(build: Build, lug: string): boolean {
  return lug.endsWith(".case") && build.parts[partOf(lug)]?.kind === "pot";
}

/** A point kept for grounds, as a tag or a star. */
export function isGroundPoint(build: Build, lug: string): boolean {
  const part = build.parts[lug];
  return part?.kind === "terminal" && part.role === "ground";
}
