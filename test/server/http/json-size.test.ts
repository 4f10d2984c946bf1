import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type JsonBounds, tooMuchIn } from "../../../src/server/http/json-size.ts";

/** Counted in the value that the platform's own parser makes of the text. */
function countedIn(text: string): JsonBounds {
  const size = { depth: 0, nests: 0, entries: 1, keys: 1, values: 1 };
  const count = (value: unknown, depth: number) => {
    if (typeof value !== "object" || value === null) return;
    const entries = Object.values(value);
    size.nests++;
    size.depth = Math.max(size.depth, depth);
    size.values += Math.max(0, entries.length - 1);
    if (Array.isArray(value)) size.entries = Math.max(size.entries, entries.length);
    else size.keys = Math.max(size.keys, entries.length);
    for (const entry of entries) count(entry, depth + 1);
  };
  count(JSON.parse(text), 1);
  return size;
}

const WIDE: JsonBounds = { depth: 99, nests: 1e6, entries: 1e6, keys: 1e6, values: 1e6 };

describe("what goes beyond a bound in a JSON text", () => {
  test("is what the platform's parser finds there too: nothing at its own size, and each of it at one less", () => {
    const texts = fc.jsonValue({ maxDepth: 6 }).map((value) => JSON.stringify(value));
    fc.assert(
      fc.property(texts, (text) => {
        const size = countedIn(text);
        expect(tooMuchIn(text, size)).toBeUndefined();
        for (const what of ["depth", "nests", "entries", "keys", "values"] as const) {
          const isLeast = size[what] <= (what === "depth" || what === "nests" ? 0 : 1);
          expect(tooMuchIn(text, { ...WIDE, [what]: size[what] - 1 })?.what).toBe(isLeast ? undefined : what);
        }
      }),
    );
  });

  test("is told with its place", () => {
    const few = { ...WIDE, entries: 2, keys: 2 };
    expect(tooMuchIn('{"a": 1, "b[,": [0, {"c": [1, [], 3]}]}', few)).toEqual({ what: "entries", path: "b[,.1.c" });
    expect(tooMuchIn('[{"a": {"x": 1}}, {"a": "k", "b": {"p": "q", "r": 1, "s": 2}}]', few)).toEqual({
      what: "keys",
      path: "1.b",
    });
    expect(tooMuchIn("[1, 2, 3]", few)).toEqual({ what: "entries", path: "" });
  });

  test("is no sign in quotes, behind a backslash too", () => {
    const text = JSON.stringify({ 'a"[{,': '\\"],[', "\\": ["[[[", '"', "\\\\"] });
    expect(tooMuchIn(text, countedIn(text))).toBeUndefined();
  });

  test("is looked for in what is no JSON as well", () => {
    expect(tooMuchIn("[".repeat(1e6), { ...WIDE, depth: 32 })).toEqual({ what: "depth", path: "" });
    expect(tooMuchIn("]]}}[,", WIDE)).toBeUndefined();
    expect(tooMuchIn('"never ends [[', { ...WIDE, depth: 0 })).toBeUndefined();
  });
});
