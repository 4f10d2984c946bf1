import { describe, expect, it } from "vitest";
import { isExtrapolated, qOfPeak, resonanceJndHz } from "../../../src/choice/compare/resonance-jnd.ts";

describe("resonances", () => {
  // Gagné and Zurek 1988: 0.079·Fr/√Q.
  it.each([
    [2000, 4, 79],
    [1000, 1, 79],
    [1000, 36, 13.17],
  ])("a resonance at %d Hz with Q %d must move %f Hz to be noticed", (hertz, q, jnd) => {
    expect(resonanceJndHz(hertz, q)).toBeCloseTo(jnd, 1);
  });

  it("says where the formula is used outside 300–2000 Hz and Q 1–36", () => {
    expect([
      isExtrapolated(2000, 4),
      isExtrapolated(2001, 4),
      isExtrapolated(1000, 0.9),
      isExtrapolated(299, 2),
    ]).toEqual([false, true, true, true]);
  });

  it("finds the Q of a second-order low-pass from its peak's height", () => {
    for (const q of [0.8, 1, 3, 10]) {
      // |H| at its maximum over H(0), sought on a fine grid of s = jw.
      let top = 0;
      for (let w = 0; w < 2; w += 1e-4) top = Math.max(top, 1 / Math.hypot(1 - w * w, w / q));
      expect(qOfPeak(20 * Math.log10(top))).toBeCloseTo(q, 4);
    }
  });
});
