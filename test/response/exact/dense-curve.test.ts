import { describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { findFeatures, REFERENCE_HZ } from "../../../src/response/features.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";
import { magnitudeDb } from "../../../src/response/level-and-phase.ts";
import type { Transfers } from "../../../src/response/transfers.ts";
import { effort } from "../../effort.ts";
import { Random } from "../../random.ts";
import { anySettings } from "./any-guard.ts";
import { extremeGuard } from "./extreme-guard.ts";
import { plausibleGuard } from "./plausible-guard.ts";

/** A hundred times as many frequencies as features are sought on. */
const DENSE = logSpaced(20, 100_000, 25_000);
const HEARD_HZ = 20_000;

function levelsOf(transfers: Transfers) {
  const levels = magnitudeDb(transfers.total(DENSE));
  const reference = magnitudeDb(transfers.total(Float64Array.of(REFERENCE_HZ)))[0]!;
  return { levels, reference };
}

/** Of the highest sample within hearing that its neighbours do not exceed, over the reference. */
function highestOf({ levels, reference }: ReturnType<typeof levelsOf>): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 1; DENSE[i]! <= HEARD_HZ; i++)
    if (levels[i]! > levels[i - 1]! && levels[i]! >= levels[i + 1]!) highest = Math.max(highest, levels[i]!);
  return highest - reference;
}

/** The last sample that is not 3 dB down; null where there is none, or nothing past it. */
function lastOf({ levels, reference }: ReturnType<typeof levelsOf>): number | null {
  const last = levels.findLastIndex((level) => level >= reference - 3);
  return last < 0 || last === levels.length - 1 ? null : DENSE[last]!;
}

/** What peak and cutoff have otherwise than the dense curve. */
function differencesOf(input: ReturnType<typeof extremeGuard>, seed: number): string[] {
  const build = readBuild(input);
  const controls = new Controls(build);
  return anySettings(new Random(seed ^ 0x77), input, 2).flatMap((raw) => {
    const transfers = new ResponseEngine(build).transfersIn(parseSettings(controls, raw));
    // Where none are found the plain solution answers, which takes minutes for as many frequencies.
    if (!transfers.levelAndPhase) return [];
    const dense = levelsOf(transfers);
    if (dense.reference <= -200) return [];
    const { peak, cutoff } = findFeatures(transfers.power());
    const [highest, last] = [highestOf(dense), lastOf(dense)];
    const misses = highest > 0.26 && !(peak && peak.level > highest - 0.0005);
    const invents = highest < 0.24 && peak !== null;
    const isElsewhere = last === null || cutoff === null ? last !== cutoff : Math.abs(cutoff / last - 1) > 0.0005;
    return [
      ...(misses || invents ? [`a peak of ${peak?.level} dB where the dense curve has ${highest}`] : []),
      ...(isElsewhere ? [`a cutoff of ${cutoff} Hz where the dense curve has ${last}`] : []),
    ];
  });
}

/** Narrow resonances of these are higher, or past the cutoff, between two frequencies of the search alone. */
const NARROW = { plausible: [136, 244, 442, 487, 583, 596, 639, 669, 823], extreme: [79, 178] };
const others = Array.from({ length: effort(5, 400) }, (_, index) => 1000 + index);

describe("peak and cutoff are those of a dense curve, with narrow resonances too", () => {
  test.each([...NARROW.plausible, ...others])("of a plausible guard, %i", (seed) => {
    expect(differencesOf(plausibleGuard(seed), seed)).toEqual([]);
  });

  test.each(NARROW.extreme)("of an extreme guard, %i", (seed) => {
    expect(differencesOf(extremeGuard(seed), seed)).toEqual([]);
  });

  /** What rises and falls within one step of the search, 3.4 %, without lifting either end is not seen: coils of hardly any loss do. */
  test("of 99 in 100 extreme guards", () => {
    const missed = others.filter((seed) => differencesOf(extremeGuard(seed), seed).length > 0);
    expect(missed.length).toBeLessThanOrEqual(others.length / 100);
  });
});
