import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { candidateText } from "../../src/page/blind/candidate.ts";
import { guessingProbability, percentText, verdictText } from "../../src/page/blind/guessing.ts";
import { readTrials } from "../../src/page/blind/trials-field.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import { fitSettings } from "../../src/page/state/fit-settings.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";
import { onePickup } from "../fixtures/circuits.ts";

describe("the probability of guessing as well", () => {
  it("is the upper tail of the binomial distribution with p = 1/2", () => {
    // Counted by hand from Pascal's triangle: row 10 ends 45, 10, 1; row 12 ends 220, 66, 12, 1.
    expect(guessingProbability(10, 10)).toBe(1 / 1024);
    expect(guessingProbability(9, 10)).toBe(11 / 1024);
    expect(guessingProbability(8, 10)).toBe(56 / 1024);
    expect(guessingProbability(9, 12)).toBe(299 / 4096);
    expect(guessingProbability(0, 10)).toBe(1);
  });

  it("falls as more are right, and the two tails of a test share the middle", () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 50 }), fc.nat(49), (trials, drawn) => {
        const right = Math.min(drawn, trials - 1);
        const here = guessingProbability(right, trials);
        expect(guessingProbability(right + 1, trials)).toBeLessThan(here);
        // By symmetry P(at least r right) + P(at least n − r + 1 right) = 1.
        expect(here + guessingProbability(trials - right + 1, trials)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("is put in plain words", () => {
    expect(verdictText(6, 10)).toBe("You could not tell them apart: buy the cheaper one.");
    expect(verdictText(8, 10)).toBe("You could not tell them apart: buy the cheaper one.");
    expect(verdictText(9, 10)).toBe("You can tell them apart.");
    expect(percentText(56 / 1024)).toBe("5.5 %");
    expect(percentText(1 / 4096)).toBe("0.02 %");
    expect(percentText(1023 / 1024)).toBe("more than 99 %");
    expect(percentText(0.623)).toBe("62 %");
  });
});

describe("a blind test's fields", () => {
  it("takes whole numbers of trials from 10 to 50, and says so of all others", () => {
    expect([readTrials("10"), readTrials("50")]).toEqual([10, 50]);
    for (const text of ["9", "51", "12.5", "", "ten", "-12"])
      expect(readTrials(text), text).toContain("expected a whole number from 10 to 50");
  });

  it("names its sides by what they do not share, and controls as the page does", () => {
    const side = (resistance: string) => {
      const volume = { kind: "pot", role: "volume", resistance, taper: "audio", label: "Loudness" };
      const result = readSource(onePickup({ parts: { volume } }) as BuildSource);
      if (!("reading" in result)) throw new Error("unreadable");
      return { reading: result.reading, settings: fitSettings(result.reading, { volume: 7 }) };
    };
    const [a, b] = [side("250k"), side("500k")];
    expect(candidateText(a, b)).toBe("this guard (Loudness resistance: 250k): Loudness at 7, Tone at 10");
    expect(candidateText(b, a)).toContain("(Loudness resistance: 500k)");
    expect(candidateText(a, a)).toBe("this guard: Loudness at 7, Tone at 10");
    const { source, ...rest } = a.reading;
    const lacking = { ...a, reading: { ...rest, source: { ...source, wires: source.wires.slice(2) } } };
    expect(candidateText(a, lacking)).toBe("this guard (2 wires of its own): Loudness at 7, Tone at 10");
    expect(candidateText(lacking, a)).toContain("(without 2 wires of the other's)");
  });
});
