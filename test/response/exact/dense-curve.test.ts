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

/** Narrow resonances of these are higher, or past the cutoff, between two frequencies of the search alone. */
const NARROW = { plausible: [136, 244, 442, 487, 583, 596, 639, 669, 823], extreme: [79, 178] };
const others = Array.from({ length: effort(5, 400) }, (_, index) => 1000 + index);

describe.each([
  ["plausible", plausibleGuard],
  ["extreme", extremeGuard],
] as const)("peak and cutoff are those of a dense curve, with narrow resonances too: %s guards", (kind, guardOf) => {
  test.each([...NARROW[kind], ...others])("%i", (seed) => {
    const input = guardOf(seed);
    const build = readBuild(input);
    const controls = new Controls(build);
    for (const raw of anySettings(new Random(seed ^ 0x77), input, 2)) {
      const transfers = new ResponseEngine(build).transfersIn(parseSettings(controls, raw));
      // Where none are found the plain solution answers, which takes minutes for as many frequencies.
      if (!transfers.levelAndPhase) continue;
      const dense = levelsOf(transfers);
      if (dense.reference <= -200) continue;
      const { peak, cutoff } = findFeatures(transfers.power());
      const highest = highestOf(dense);
      if (highest > 0.26) expect(peak!.level).toBeGreaterThan(highest - 0.0005);
      if (highest < 0.24) expect(peak).toBeNull();
      const last = lastOf(dense);
      if (last === null) expect(cutoff).toBeNull();
      else expect(cutoff! / last).toBeCloseTo(1, 3);
    }
  });
});
