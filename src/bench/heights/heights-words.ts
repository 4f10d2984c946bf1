import { listed } from "../../english.ts";
import { millimetresText } from "../../lengths.ts";
import { dbPerMillimetre } from "./distance-law.ts";
import type { FittedLaws } from "./fit-laws.ts";
import { gapUnder } from "./gaps.ts";
import { relativePull } from "./magnet-pull.ts";
import type { PositionFigures } from "./position-figures.ts";
import type { Recorded } from "./recorded.ts";
import { gapOf, SIDES } from "./screws.ts";
import type { SolvedPickup } from "./solve-turns.ts";
import { decibelWords } from "./turn-words.ts";

/** Symptoms in the trade's words; common practice, no source. */
const PULL_SYMPTOMS =
  "Too strong a pull makes notes warble and beat, most of all on the wound strings high up the neck, and brings them out of tune: if that is heard, lower this side, whatever the levels say";

/** Warnings of pickups that come near the strings. */
export function pullWarnings(solved: readonly SolvedPickup[]): string[] {
  return solved.flatMap(({ pickup, gaps }) =>
    SIDES.flatMap((side) => {
      const [before, after] = [gapOf(pickup.gaps, side), gapOf(gaps, side)];
      if (after >= pickup.pullMetres) return [];
      const times = relativePull(pickup.magnet, after) / relativePull(pickup.magnet, before);
      const change =
        Math.abs(times - 1) < 0.05 ? "pulls as it does now" : `pulls ${times.toFixed(1)} times as hard as now`;
      return [
        `${pickup.name}, ${side} side: at ${millimetresText(after)} it is nearer than ${millimetresText(pickup.pullMetres)}, and a rod magnet ${change} (slope of the squared field on its axis). ${PULL_SYMPTOMS}.`,
      ];
    }),
  );
}

/** Warnings of heights that no recording reached. */
export function reachWarnings(
  solved: readonly SolvedPickup[],
  { observations, stringCount, pickups }: Recorded,
): string[] {
  const middle = (stringCount + 1) / 2;
  return solved.flatMap(({ pickup, gaps }) => {
    const index = pickups.indexOf(pickup.name);
    const seen = observations.map((observation) => gapUnder(observation.gaps[index]!, middle, stringCount));
    const [least, most] = [Math.min(...seen), Math.max(...seen)];
    const gap = gapUnder(gaps, middle, stringCount);
    if (gap >= least * 0.9 && gap <= most * 1.1) return [];
    return [
      `${pickup.name}: ${millimetresText(gap)} in its middle lies outside the heights that were recorded, ${millimetresText(least)} to ${millimetresText(most)}. Turn it there, record once more, and ask again with all recordings.`,
    ];
  });
}

function stringWords(numbers: readonly number[]): string {
  return `string${numbers.length === 1 ? "" : "s"} ${listed(numbers)}`;
}

/** What no screw at a pickup's ends can do, and what keeps them. */
export function leftOver(
  positions: readonly PositionFigures[],
  solved: readonly SolvedPickup[],
  withinDb: number,
  withStrings: boolean,
): string[] {
  const held = solved.flatMap(({ pickup, screws }) =>
    screws.flatMap(({ side, stoppedBy, gapAfter }) =>
      stoppedBy === null
        ? []
        : [
            `the ${side} side of ${pickup.name} stands at its ${stoppedBy === "min" ? "least" : "greatest"} gap, ${millimetresText(gapAfter)}`,
          ],
    ),
  );
  const off = positions.filter(({ offAfter }) => Math.abs(offAfter ?? 0) > withinDb);
  const why =
    held.length > 0
      ? `: ${listed(held)}`
      : "; the pickups that it shares with other positions cannot serve all of them";
  const ofPositions = off.map(
    ({ label, offAfter }) =>
      `${label} stays ${decibelWords(offAfter!)} too ${offAfter! > 0 ? "loud" : "soft"}${why}. The turns told come nearest to balance.`,
  );
  if (!withStrings) return ofPositions;
  const ofStrings = positions.flatMap(({ label, strings }) => {
    const numbers = strings.flatMap(({ offAfter }, index) => (Math.abs(offAfter ?? 0) > withinDb ? [index + 1] : []));
    if (numbers.length === 0) return [];
    const told = numbers.map((number) => {
      const { offAfter } = strings[number - 1]!;
      return `string ${number} ${decibelWords(offAfter!)} too ${offAfter! > 0 ? "loud" : "soft"}`;
    });
    return [
      `${label}: ${listed(told)}. Two screws tilt a pickup and no more: ${stringWords(numbers)} can be set by pole screws where there are any, or by another gauge.`,
    ];
  });
  return [...ofPositions, ...ofStrings];
}

/** What a law says in a sentence. */
export function lawWords(name: string, fitted: FittedLaws, index: number, gapMetres: number): string {
  const law = fitted.laws[index]!;
  const range = fitted.t * fitted.exponentErrors[index]!;
  const slope = dbPerMillimetre(law, gapMetres);
  const bend = law.offsetMetres === 0 ? "" : `, less steeply ${law.offsetMetres > 0 ? "nearer" : "farther"}`;
  return `${name}: level falls as the gap to the power of ${fitted.exponents[index]!.toFixed(2)} ± ${range.toFixed(2)}${bend}; a millimetre lower at ${millimetresText(gapMetres)} takes about ${slope.toFixed(1)} dB.`;
}
