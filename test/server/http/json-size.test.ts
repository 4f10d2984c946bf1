import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type JsonSize, jsonSize } from "../../../src/server/http/json-size.ts";

const DEEPEST = 32;

/** Counted in the value that the platform's own parser makes of the text. */
function countedIn(text: string): JsonSize {
  const size = { depth: 0, nests: 0, longest: 1, widest: 1, values: 1 };
  const count = (value: unknown, depth: number) => {
    if (typeof value !== "object" || value === null) return;
    const entries = Object.values(value);
    size.nests++;
    size.depth = Math.max(size.depth, depth);
    size.values += Math.max(0, entries.length - 1);
    if (Array.isArray(value)) size.longest = Math.max(size.longest, entries.length);
    else size.widest = Math.max(size.widest, entries.length);
    for (const entry of entries) count(entry, depth + 1);
  };
  count(JSON.parse(text), 1);
  return size;
}

const told = ({ depth, nests, longest, widest, values }: JsonSize) => ({
  depth,
  nests,
  // A list or an object of one entry has no comma to be told by.
  longest: Math.max(1, longest),
  widest: Math.max(1, widest),
  values,
});

describe("the size of a JSON text, from its signs", () => {
  test("is that of what the platform's parser makes of it", () => {
    const texts = fc.jsonValue({ maxDepth: 6 }).map((value) => JSON.stringify(value));
    fc.assert(
      fc.property(texts, (text) => {
        expect(told(jsonSize(text, DEEPEST))).toEqual(countedIn(text));
      }),
    );
  });

  test("leaves alone what stands in quotes, behind a backslash too", () => {
    const text = JSON.stringify({ 'a"[{,': '\\"],[', "\\": ["[[[", '"', "\\\\"] });
    expect(told(jsonSize(text, DEEPEST))).toEqual(countedIn(text));
  });

  test("is told as soon as it is too deep, and of what is no JSON too", () => {
    expect(jsonSize("[".repeat(1e6), DEEPEST)).toMatchObject({ depth: DEEPEST + 1, nests: DEEPEST + 1 });
    expect(jsonSize("]]}}[,", DEEPEST)).toMatchObject({ depth: 1, nests: 1, longest: 2 });
    expect(jsonSize('"never ends [[', DEEPEST)).toMatchObject({ depth: 0, nests: 0 });
  });
});
