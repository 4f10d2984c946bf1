import { describe, expect, it } from "vitest";
import { differenceText, named } from "../../src/page/builds/difference-words.ts";
import { largestDifference, largestOfAll } from "../../src/page/engine/curve-difference.ts";
import { KnownGuard } from "../../src/page/engine/known-guard.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";
import { onePickup } from "../fixtures/circuits.ts";

function read(source: object): KnownGuard {
  const result = readSource(source as BuildSource);
  if (!("reading" in result)) throw new Error("unreadable");
  return new KnownGuard(result.reading);
}

const guard = read(onePickup());
/** The same guard with its jack's tip on ground. */
const muted = read({ ...onePickup(), wires: [...(onePickup() as BuildSource).wires, ["jack.tip", "jack.sleeve"]] });

describe("what two guards differ by, in words", () => {
  it("is silence where one of them gives no sound, in either order and over all settings", () => {
    const open = { tone: 10, volume: 10 };
    expect(differenceText(largestDifference(muted, guard, open))).toBe("A is silent and B is not");
    expect(differenceText(largestDifference(guard, muted, open))).toBe("B is silent and A is not");
    expect(differenceText(largestOfAll(guard, muted, open))).toBe("B is silent and A is not");
    expect(differenceText(largestDifference(muted, muted, open))).toMatch(/^no difference/);
  });

  it("names both guards in every sentence of a verdict", () => {
    const verdict =
      "With tone 10 they differ by 2.0 dB at 4 kHz: heard side by side; left as they are, the second is 1.5 LU louder. " +
      "With tone 5 they differ by 3.0 dB at 4 kHz: plainly heard; left as they are, the second is 2.0 LU louder; " +
      "the second's peak is 300 Hz lower, 2.0 just-noticeable steps. With tone 0 the first is silent.";
    const words = named(verdict, "A", "B");
    expect(words).not.toMatch(/first|second/);
    expect(words).toContain("left as they are, B is 2.0 LU louder; B's peak is 300 Hz lower");
    expect(words).toContain("With tone 0 A is silent.");
  });
});
