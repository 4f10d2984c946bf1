import { isCut } from "../connections.ts";
import type { Build } from "../schema.ts";
import type { LugNumber, LugSpace } from "./lug-space.ts";
import type { Strand } from "./strands.ts";

/** What grows out of a lug and can be soldered elsewhere. */
export interface OwnLeg {
  readonly lug: LugNumber;
  readonly means: "leg" | "lead" | "bent lug";
  /** The one lug it reaches; any other where absent. */
  readonly reaches?: LugNumber;
}

const LUGS_THAT_BEND = ["1", "2", "3", "b1", "b2", "b3"];

/** Whether wires are soldered to the lug itself: then it is an eyelet, without a lead. */
function isEyelet(lug: LugNumber, strands: readonly Strand[]): boolean {
  return strands.some((strand) => isCut(strand) && strand.lugs.some((at, end) => at === lug && !strand.grown[end]));
}

function growsFrom(lug: LugNumber, strands: readonly Strand[]): boolean {
  return strands.some(({ lugs, grown }) => lugs.some((at, end) => at === lug && grown[end]));
}

/**
 * Legs and leads that hang free before anything is opened, and lugs that could be bent to their case.
 * @param found strands of the guard as found, and what is joined inside parts that come in
 * @param wanted strands of the guard as wanted, which tell how a part is made that comes in or hangs free
 */
export function ownLegs(to: Build, space: LugSpace, found: readonly Strand[], wanted: readonly Strand[]): OwnLeg[] {
  return Object.entries(to.parts).flatMap(([name, part]): OwnLeg[] => {
    const lugs = (locals: readonly string[]) => locals.map((local) => space.ofWanted(`${name}.${local}`));
    if (part.kind === "pot") {
      const bending = LUGS_THAT_BEND.slice(0, part.gangs ? 6 : 3);
      const reaches = space.ofWanted(`${name}.case`);
      return lugs(bending).map((lug) => ({ lug, means: "bent lug", reaches }));
    }
    if (part.kind === "cap" || part.kind === "resistor")
      return lugs(["a", "b"])
        .filter((lug) => !growsFrom(lug, found))
        .map((lug) => ({ lug, means: "leg" }));
    if (part.kind !== "pickup") return [];
    return space
      .lugsOf(name)
      .filter((lug) => !growsFrom(lug, found))
      .filter((lug) => !isEyelet(lug, found) && (growsFrom(lug, wanted) || !isEyelet(lug, wanted)))
      .map((lug) => ({ lug, means: "lead" }));
  });
}
