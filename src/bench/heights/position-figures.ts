import { type Controls, rawSettings, type SettingValue } from "../../build-file/settings.ts";
import { meanOf, type Target, targetLevel } from "./balance.ts";
import type { FittedLaws } from "./fit-laws.ts";
import type { Gaps } from "./gaps.ts";
import { predictorOf } from "./predictor.ts";
import type { Position, Recorded } from "./recorded.ts";

/** A level now and after the screws are turned, beside what it is to be, in dB. */
export interface LevelFigures {
  readonly level: number;
  /** From the target: of a position, the level all are to come to; of a string, its position's mean. */
  readonly off: number;
  readonly offAfter: number | null;
  /** ± of the latter, 95 %. */
  readonly errorAfter: number | null;
}

export interface PositionFigures extends LevelFigures {
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly label: string;
  /** From string 1. */
  readonly strings: readonly LevelFigures[];
}

type Levels = readonly (readonly number[])[];

/** How far every position is from the target, then how far every string is from its position's mean. */
function deviations(levels: Levels, now: Levels, target: Target): { positions: number[]; strings: number[][] } {
  const goal = targetLevel(levels, { target, now });
  return {
    positions: levels.map((strings) => meanOf(strings) - goal),
    strings: levels.map((strings) => strings.map((level) => level - meanOf(strings))),
  };
}

/** As the positions stand, where no screw is to be turned yet. */
export function figuresNow(
  positions: readonly Position[],
  controls: Controls,
  now: Levels,
  target: Target,
): PositionFigures[] {
  const { positions: off, strings } = deviations(now, now, target);
  const unknown = { offAfter: null, errorAfter: null };
  return positions.map(({ settings, label }, k) => ({
    settings: rawSettings(controls, settings),
    label,
    level: meanOf(now[k]!),
    off: off[k]!,
    ...unknown,
    strings: strings[k]!.map((own, s) => ({ level: now[k]![s]!, off: own, ...unknown })),
  }));
}

interface Turned {
  readonly recorded: Recorded;
  readonly fitted: FittedLaws;
  readonly controls: Controls;
  readonly target: Target;
  readonly before: readonly Gaps[];
  readonly after: readonly Gaps[];
}

/** As the positions stand and as they will, with what laws and levels leave open. */
export function figuresAfter({ recorded, fitted, controls, target, before, after }: Turned): PositionFigures[] {
  const under = (laws: FittedLaws["laws"]) => {
    const predict = predictorOf(recorded, laws);
    return deviations(predict(after), predict(before), target);
  };
  const here = under(fitted.laws);
  const others = fitted.deviations.map(under);
  const noise = recorded.positions.map(
    (_, k) => fitted.sigmaDb ** 2 / recorded.observations.filter(({ position }) => position === k).length,
  );
  const ofReference = target.reference === null ? 0 : noise[target.reference]! / recorded.stringCount;
  const error = (variance: number, shifts: readonly number[]) =>
    fitted.t * Math.sqrt(shifts.reduce((sum, shift) => sum + shift * shift, variance));
  const now = predictorOf(recorded, fitted.laws)(before);
  return figuresNow(recorded.positions, controls, now, target).map((figures, k) => ({
    ...figures,
    offAfter: here.positions[k]!,
    errorAfter: error(
      k === target.reference ? 0 : noise[k]! / recorded.stringCount + ofReference,
      others.map(({ positions }) => positions[k]! - here.positions[k]!),
    ),
    strings: figures.strings.map((string, s) => ({
      ...string,
      offAfter: here.strings[k]![s]!,
      errorAfter: error(
        noise[k]!,
        others.map(({ strings }) => strings[k]![s]! - here.strings[k]![s]!),
      ),
    })),
  }));
}
