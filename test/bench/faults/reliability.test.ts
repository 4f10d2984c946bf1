import { describe, expect, it } from "vitest";
import { effort } from "../../effort.ts";
import { scenarioBuilds } from "../scenario-builds.ts";
import { seeded } from "./blind-trials.ts";
import { FAMILIES, type Sort, type Trial, trial } from "./reliability.ts";

const ROUNDS = effort(5, 40);
/** Of fifteen guards, three have two faults and two have none. */
const SORTS: readonly Sort[] = [...FAMILIES, "double", "double", "double", "sound", "sound"];
const CONFIDENT = 0.8;

function trials(): Trial[] {
  const random = seeded(31);
  return Array.from({ length: ROUNDS }, () => SORTS)
    .flat()
    .flatMap((sort) => {
      const { build } = scenarioBuilds[Math.floor(random() * scenarioBuilds.length)]!;
      return trial(build, sort, random) ?? [];
    });
}

function share(of: readonly Trial[], is: (each: Trial) => boolean): number {
  return of.filter(is).length / of.length;
}

function listed(of: readonly Trial[]): string {
  return of.map(({ sort, truth, probability, said }) => `${sort}: ${truth}, told ${probability}: ${said}`).join("\n");
}

// Parts anywhere in tolerance, five readings at the jack with 1 to 3 % of noise, pots' ends of up to 1 % of the track, up to
// three things noticed; single faults of every family, pairs of them, and sound guards.
describe("blind trials with five readings", () => {
  const all = trials();
  const confident = all.filter(({ probability }) => probability >= CONFIDENT);

  it("are right in at least 80 % of the explanations given with 80 % or more, hidden second faults counted as misses", () => {
    expect(confident.length).toBeGreaterThan(all.length / 4);
    const missed = confident.filter(({ isRight }) => !isRight);
    expect(
      share(confident, ({ isRight }) => isRight),
      listed(missed),
    ).toBeGreaterThanOrEqual(CONFIDENT);
  });

  it("are right in 90 % of them but for second faults that change nothing told", () => {
    const missed = confident.filter(({ isEqual }) => !isEqual);
    expect(
      share(confident, ({ isEqual }) => isEqual),
      listed(missed),
    ).toBeGreaterThanOrEqual(0.9);
  });

  it("claim no more than they keep, in every band of what is claimed", () => {
    const bands = [0, 0.5, 0.7, 0.85, 1];
    for (const [index, high] of bands.slice(1).entries()) {
      const band = all.filter(({ probability }) => probability >= bands[index]! && probability < high);
      if (band.length < 10) continue;
      const claimed = band.reduce((sum, { probability }) => sum + probability, 0) / band.length;
      // Two standard deviations of so many trials.
      const slack = 2 * Math.sqrt((claimed * (1 - claimed)) / band.length);
      expect(
        share(band, ({ isEqual }) => isEqual),
        `claimed ${claimed}`,
      ).toBeGreaterThan(claimed - slack);
    }
  });

  it("call no fault certain on a sound guard", () => {
    const sound = all.filter(({ sort }) => sort === "sound");
    expect(share(sound, ({ isRight }) => isRight)).toBeGreaterThanOrEqual(0.95);
  });

  it.each<Sort>([
    "open wire",
    "reversed pot",
    "wrong pot",
    "broken coil",
    "shorted turns",
    "poor joint",
    "moving part",
  ])("name a single fault, or what reads the same, first: %s", (sort) => {
    const of = all.filter((each) => each.sort === sort);
    expect(
      share(of, ({ isRight }) => isRight),
      listed(of.filter(({ isRight }) => !isRight)),
    ).toBeGreaterThanOrEqual(0.8);
  });

  it("name at least one of two faults first in most", () => {
    const of = all.filter(({ sort }) => sort === "double");
    expect(share(of, ({ isPartly }) => isPartly)).toBeGreaterThanOrEqual(0.85);
  });
});
