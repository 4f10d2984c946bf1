import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { compare, type Side } from "../../src/choice/compare/compare.ts";
import { levelMatchedDifference } from "../../src/choice/compare/difference.ts";
import { peakShift } from "../../src/choice/compare/resonance-jnd.ts";
import { verdictOn } from "../../src/choice/compare/verdict.ts";
import { flatDrive } from "../../src/choice/drive.ts";
import { Guard } from "../../src/choice/guard.ts";
import { SLICES } from "../../src/choice/slices.ts";
import { onePickup } from "../fixtures/circuits.ts";

const flat = new Float64Array(SLICES.frequenciesHz.length).fill(1);
const twiceAsStrong = flat.map((energy) => 4 * energy);

function side(build: object, settings: readonly RawSettings[]): Side {
  const guard = new Guard(readBuild(build));
  return { guard, drive: flatDrive(), settings: settings.map((each) => parseSettings(guard.controls, each)) };
}

describe("the words of one setting", () => {
  it("name whose loudness and whose peak they speak of", () => {
    const shift = peakShift({ frequency: 3000, level: 6 }, { frequency: 3300, level: 6 });
    expect(verdictOn(levelMatchedDifference(flat, twiceAsStrong), shift)).toMatch(
      /; left as they are, the second is 6\.0 LU louder; the second's peak is 300 Hz higher, /,
    );
    expect(verdictOn(levelMatchedDifference(flat, flat), shift)).toMatch(/; the second's peak is 300 Hz higher, /);
  });

  it("call a difference too small to be written so, and not a difference of 0.00 dB", () => {
    expect(verdictOn(levelMatchedDifference(flat, flat), null)).toBe(
      "they differ by less than 0.01 dB: nobody hears this",
    );
  });
});

describe("the verdict on several settings", () => {
  const settings = [{ tone: 10 }, { tone: 0 }, { tone: 5 }];
  const other = onePickup({ parts: { cap: { kind: "cap", capacitance: "47n" } } });
  const mutedAt = (volumes: readonly number[]) => volumes.map((volume) => ({ volume }));

  it("takes a setting in which one guard alone is silent for the largest difference of all", () => {
    // At volume 0 the wiper lies on ground: silence against a sounding guard.
    const { rows, verdict } = compare(side(onePickup(), mutedAt([10, 5, 10])), side(other, mutedAt([10, 0, 10])), {
      draws: 20,
    });
    expect(rows[1]!.verdict).toBe("the second is silent");
    expect(verdict).toMatch(/^With tone 10, volume 10 they differ by /);
    expect(verdict).toMatch(
      / With tone 10, volume 5 \/ tone 10, volume 0 the second is silent\. A difference can be heard in /,
    );
  });

  it("does not hold silence against tolerance", () => {
    const muted = mutedAt([0]);
    const { verdict } = compare(side(onePickup(), muted), side(other, muted), { draws: 20 });
    expect(verdict).toBe("With tone 10, volume 0 both are silent.");
  });

  it("says plainly that nothing is heard anywhere", () => {
    const { verdict } = compare(side(onePickup(), settings), side(onePickup(), settings), null);
    expect(verdict).toMatch(/No difference can be heard in any of 3 settings\.$/);
  });
});
