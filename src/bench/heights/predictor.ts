import { amplitudeFromDecibels, powerDecibels, SILENCE_DB } from "../../decibels.ts";
import { type DistanceLaw, lawDb, UNMOVED } from "./distance-law.ts";
import { type Gaps, gapUnder } from "./gaps.ts";
import { groupsIn, type Recorded } from "./recorded.ts";

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

/** Every group's law at every observation, by group and string: each is wanted twice. */
function lawTable(mixing: Mixing): number[][][] {
  const { observations, stringCount } = mixing.recorded;
  return observations.map(({ gaps }) =>
    mixing.laws.map((_, group) => Array.from({ length: stringCount }, (_, s) => lawAt(mixing, gaps, group, s + 1))),
  );
}

/** The observations in which each group sounds and nothing else does. */
function observationsAlone({ recorded, laws }: Mixing): number[][] {
  const sounding = recorded.positions.map((position) => groupsIn(position, laws.length));
  return laws.map((_, group) =>
    recorded.observations.flatMap(({ position }, index) =>
      sounding[position]!.join() === String(group) ? [index] : [],
    ),
  );
}

/**
 * Every group's strength in dB by string, its law taken out. One that never sounds alone is taken as the build file has it beside
 * the others, at the middle of the heights recorded.
 */
function strengthsOf(mixing: Mixing, alone: readonly (readonly number[])[]): number[][] {
  const { recorded, laws } = mixing;
  const size = laws.length;
  const table = lawTable(mixing);
  const strings = Array.from({ length: recorded.stringCount }, (_, index) => index);
  const middles = laws.map((_, group) => strings.map((s) => mean(table.map((of) => of[group]![s]!))));
  const own = laws.map((_, group) =>
    strings.map((s) => {
      const found = alone[group]!.map((index) => {
        const { position, levelsDb } = recorded.observations[index]!;
        const energy = recorded.positions[position]!.energies[s]![group * size + group]!;
        return levelsDb[s]! - powerDecibels(energy) - table[index]![group]![s]!;
      });
      return found.length > 0 ? mean(found) : undefined;
    }),
  );
  return laws.map((_, group) =>
    strings.map((s) => {
      const known = own.flatMap((each, other) => (each[s] === undefined ? [] : [each[s] + middles[other]![s]!]));
      return own[group]![s] ?? (known.length > 0 ? mean(known) : 0) - middles[group]![s]!;
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
  const strengths = strengthsOf(mixing, observationsAlone(mixing));
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
