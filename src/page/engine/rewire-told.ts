import { describePart } from "../../bench/parts/describe-part.ts";
import { type Rewiring, rewire } from "../../build-file/rewire/rewire.ts";
import type { Build } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";

/** A rewiring with its parts as a person and a shop would call them. */
export interface RewiringTold extends Omit<Rewiring, "result"> {
  /** "Lower tone: pot 250k audio". */
  readonly goOut: readonly string[];
  readonly comeIn: readonly string[];
}

function partTexts({ parts }: Build, changes: readonly { readonly name: string }[]): string[] {
  const words = partWords(parts);
  return changes.map(({ name }) => {
    const called = words.get(name)!;
    return `${called.charAt(0).toUpperCase()}${called.slice(1)}: ${describePart(parts[name]!).what}`;
  });
}

/** Worked out in the browser as the service works it out. */
export function rewireTold(from: Build, to: Build): RewiringTold {
  const { result: _, ...rewiring } = rewire(from, to);
  const { goOut, comeIn } = rewiring.parts;
  return { ...rewiring, goOut: partTexts(from, goOut), comeIn: partTexts(to, comeIn) };
}
