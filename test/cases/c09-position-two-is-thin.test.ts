import { describe, expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import { buildOf, leadsSwapped, REVERSED, single, threeSingles } from "../bench/audit/guards.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { levelsAt, ohmsBetween } from "./measured.ts";

const inPhase = withIdealPots(buildOf(threeSingles));
const bridgeSwapped = withIdealPots(buildOf(threeSingles, leadsSwapped("bridge", "lever.A1")));
const middleSwapped = withIdealPots(buildOf(threeSingles, leadsSwapped("middle", "lever.A2")));

// 6 k ∥ 6 k ∥ 250 k is 2.964 kΩ; signals of 1 and 0.8 leave 0.2 against 1.8. Both worked by hand.
describe("C09: position 2 thin, 1 and 3 fine", () => {
  test("the meter reads 2.964 kΩ in position 2 whether in or out of phase", () => {
    for (const build of [inPhase, bridgeSwapped, middleSwapped])
      expect(ohmsBetween(build, "jack.tip", "jack.sleeve", { lever: 2 })).toBeCloseTo(2964, 0);
  });

  test("equal signals out of phase are silence", () => {
    expect(levelsAt(bridgeSwapped, [200, 1000, 5000], { lever: 2 })).toSatisfy((levels: number[]) =>
      levels.every((level) => level < -150),
    );
  });

  test("with one at 80 % of the other's level, out of phase is 19.1 dB below in phase", () => {
    const weak = { ...REVERSED, output: 0.8, distance: "0.1m" };
    const change = { middle: single(weak) };
    const together = levelsAt(buildOf(threeSingles, { change }), [200, 1000, 5000], { lever: 2 });
    const against = levelsAt(
      buildOf(threeSingles, { ...leadsSwapped("middle", "lever.A2"), change }),
      [200, 1000, 5000],
      {
        lever: 2,
      },
    );
    // (1 − 0.8) / (1 + 0.8), the same at every frequency.
    for (const [i, level] of against.entries()) expect(level - together[i]!).toBeCloseTo(20 * Math.log10(0.2 / 1.8), 3);
    expect(against[0]! - together[0]!).toBeCloseTo(-19.1, 1);
  });

  test("with middle and neck fine together, the bridge is the one to swap", () => {
    const found = auditBuild(bridgeSwapped).find(({ code }) => code === "pair-out-of-phase");
    expect(found).toMatchObject({ settings: [{ lever: 2 }], lugs: ["bridge.ground", "bridge.hot"] });
    expect(found!.remedy).toContain("Swap the two leads of bridge.");
  });

  test("with positions 2 and 4 both thin, the middle is the one to swap", () => {
    const found = auditBuild(middleSwapped).find(({ code }) => code === "pair-out-of-phase");
    expect(found).toMatchObject({ settings: [{ lever: 2 }, { lever: 4 }], lugs: ["middle.ground", "middle.hot"] });
    expect(found!.remedy).toContain("Swap the two leads of middle.");
  });
});
