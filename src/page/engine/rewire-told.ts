import { describePart } from "../../bench/parts/describe-part.ts";
import { type Rewiring, rewire } from "../../build-file/rewire/rewire.ts";
import type { Build } from "../../build-file/schema.ts";

/** A rewiring with its parts as a shop would call them. */
export interface RewiringTold extends Pick<Rewiring, "steps" | "home" | "kept"> {
  /** "tone cap: cap 22 nF ±10 %". */
  readonly goOut: readonly string[];
  readonly comeIn: readonly string[];
}

/** Worked out in the browser as the service works it out. */
export function rewireTold(from: Build, to: Build): RewiringTold {
  const { steps, home, kept, parts } = rewire(from, to);
  const words =
    ({ parts: of }: Build) =>
    ({ name }: { readonly name: string }) =>
      `${name}: ${describePart(of[name]!).what}`;
  return { steps, home, kept, goOut: parts.goOut.map(words(from)), comeIn: parts.comeIn.map(words(to)) };
}
