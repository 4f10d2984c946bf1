import { describe, expect, test } from "vitest";
import { effort } from "../../effort.ts";
import { extremeGuard } from "./extreme-guard.ts";
import { worstOf } from "./held-to-solution.ts";
import { plausibleGuard } from "./plausible-guard.ts";

describe("curves are the plain solution from 20 Hz to 96 kHz, alone, kept and in a sweep, peak and cutoff to the last digit", () => {
  test.each([
    ["plausible", plausibleGuard],
    ["extreme", extremeGuard],
  ] as const)("%s guards", (_, guardOf) => {
    for (let seed = 0; seed < effort(4, 250); seed++) {
      const worst = worstOf(guardOf(seed), seed);
      if (worst.decibels > 0.001 || worst.degrees > 0.01 || worst.differing > 0)
        expect.soft(worst, `guard ${seed}`).toMatchObject({ decibels: 0, degrees: 0, differing: 0 });
    }
  });
});
