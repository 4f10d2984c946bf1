import { amplitudeFromDecibels, powerDecibels, SILENCE_DB } from "../../decibels.ts";
import { type DistanceLaw, lawDb, UNMOVED } from "./distance-law.ts";
import { type Gaps, gapUnder } from "./gaps.ts";
import { groupsIn, type Observation, type Recorded } from "./recorded.ts";

/** Levels in dB by position and string for the gaps of all movable pickups. */
export type Predictor = (gaps: readonly Gaps[]) => number[][];

interface Mixing {
  readonly recorded: Recorded;
  /** By group; what no screw moves comes last. */
  readonly laws: readonly DistanceLaw[];
}

function lawAt({ recorded, laws }: Mixing, gaps: readonly Gaps[], group: number, string: number): number {
  const own = gaps[group];
  return own ? lawDb(laws[group]!, gapUnder(own, string, recorded.stringCount)) : 0;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The strength in dB that a group shows on a string wherever it sounds alone, its law taken out; undefined where it never does. */
function strengthAlone(
  mixing: Mixing,
  alone: readonly Observation[],
  group: number,
  string: number,
): number | undefined {
  if (alone.length === 0) return undefined;
  const { recorded, laws } = mixing;
  const size = laws.length;
  const found = alone.map(({ position, gaps, levelsDb }) => {
    const own = recorded.positions[position]!.energies[string - 1]![group * size + group]!;
    return levelsDb[string - 1]! - powerDecibels(own) - lawAt(mixing, gaps, group, string);
  });
  return mean(found);
}

/**
 * Every group's strength in dB by string. One that never sounds alone is taken as the build file has it beside the others, at
 * the middle of the heights recorded.
 */
function strengthsOf(mixing: Mixing): number[][] {
  const { recorded, laws } = mixing;
  const size = laws.length;
  const sounding = recorded.positions.map((position) => groupsIn(position, size));
  const strings = Array.from({ length: recorded.stringCount }, (_, index) => index + 1);
  const middles = laws.map((_, group) =>
    strings.map((string) => mean(recorded.observations.map(({ gaps }) => lawAt(mixing, gaps, group, string)))),
  );
  const alone = laws.map((_, group) => {
    const own = recorded.observations.filter(({ position }) => sounding[position]!.join() === String(group));
    return strings.map((string) => strengthAlone(mixing, own, group, string));
  });
  return laws.map((_, group) =>
    strings.map((_, index) => {
      const own = alone[group]![index];
      if (own !== undefined) return own;
      const known = alone.flatMap((each, other) =>
        each[index] === undefined ? [] : [each[index] + middles[other]![index]!],
      );
      return (known.length > 0 ? mean(known) : 0) - middles[group]![index]!;
    }),
  );
}

/** Groups of so many dB mixed; counted from the strongest, since a steep law leaves the range of numbers. */
function mixedDb(energies: Float64Array, strengthsDb: readonly number[]): number {
  const size = strengthsDb.length;
  const strongest = Math.max(...strengthsDb.filter((_, group) => energies[group * size + group]! > 0));
  if (!Number.isFinite(strongest)) return SILENCE_DB;
  const amplitudes = strengthsDb.map((db) => amplitudeFromDecibels(Math.min(0, db - strongest)));
  let power = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) power += amplitudes[i]! * amplitudes[j]! * energies[i * size + j]!;
  return strongest + powerDecibels(power);
}

/** The model's level of a string in a position, up to a constant of each that the recordings put right. */
function modelOf(mixing: Mixing): (position: number, string: number, gaps: readonly Gaps[]) => number {
  const strengths = strengthsOf(mixing);
  return (position, string, gaps) => {
    const strengthsDb = mixing.laws.map(
      (_, group) => strengths[group]![string - 1]! + lawAt(mixing, gaps, group, string),
    );
    return mixedDb(mixing.recorded.positions[position]!.energies[string - 1]!, strengthsDb);
  };
}

/** Measured minus modelled, in dB: by position, string and observation of the position. */
export function misfits(recorded: Recorded, laws: readonly DistanceLaw[]): number[][][] {
  const model = modelOf({ recorded, laws: [...laws, UNMOVED] });
  return recorded.positions.map((_, position) => {
    const own = recorded.observations.filter((observation) => observation.position === position);
    return Array.from({ length: recorded.stringCount }, (_, index) =>
      own.map(({ gaps, levelsDb }) => levelsDb[index]! - model(position, index + 1, gaps)),
    );
  });
}

/** The levels at any heights. They go through the mean of what was recorded: the model answers only for how they change. */
export function predictorOf(recorded: Recorded, laws: readonly DistanceLaw[]): Predictor {
  const model = modelOf({ recorded, laws: [...laws, UNMOVED] });
  const anchors = misfits(recorded, laws).map((strings) => strings.map(mean));
  return (gaps) =>
    anchors.map((strings, position) => strings.map((anchor, index) => anchor + model(position, index + 1, gaps)));
}
