/**
 * How far a note's pitch stands above its fret: points [seconds from the pluck, semitones], times not falling. Straight between
 * them, the first and the last value hold beyond. The string keeps its length, as under a bend; a slide keeps the coil's comb of
 * the fret that it starts from.
 */
export type PitchCurve = readonly (readonly [seconds: number, semitones: number])[];

export function bentUp(semitones: number, fromSeconds: number, toSeconds: number): PitchCurve {
  return [
    [fromSeconds, 0],
    [toSeconds, semitones],
  ];
}

/** Points of one cycle of vibrato: a sixteenth of it is as good as round. */
const POINTS_PER_CYCLE = 16;

export interface Vibrato {
  /** From the fret's pitch upwards, as a finger can only tighten a string. */
  readonly semitones: number;
  readonly cyclesPerSecond: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** Whole cycles, over what the pitch already stands at. */
export function vibrato({ semitones, cyclesPerSecond, fromSeconds, toSeconds }: Vibrato, above = 0): PitchCurve {
  const cycles = Math.floor((toSeconds - fromSeconds) * cyclesPerSecond);
  return Array.from({ length: cycles * POINTS_PER_CYCLE + 1 }, (_, index) => {
    const turn = index / POINTS_PER_CYCLE;
    const raised = (semitones * (1 - Math.cos(2 * Math.PI * turn))) / 2;
    return [fromSeconds + turn / cyclesPerSecond, above + raised] as const;
  });
}

/** A finger that slides, hammers or pulls needs so long from pitch to pitch. */
const STEP_SECONDS = 0.012;

/** Pitches stepped to at their times, `[seconds, semitones]`: hammered on and pulled off. */
export function steppedTo(...steps: readonly (readonly [number, number])[]): PitchCurve {
  return steppedFrom(0, steps);
}

/** Over the frets of so many semitones, upwards from `above`. */
export function slidOver(semitones: number, fromSeconds: number, toSeconds: number, above = 0): PitchCurve {
  const perFret = (toSeconds - fromSeconds) / semitones;
  const frets = Array.from({ length: semitones }, (_, i) => [fromSeconds + i * perFret, above + i + 1] as const);
  return steppedFrom(above, frets);
}

function steppedFrom(first: number, steps: readonly (readonly [number, number])[]): PitchCurve {
  let last = first;
  return steps.flatMap(([seconds, semitones]) => {
    const points = [[seconds, last] as const, [seconds + STEP_SECONDS, semitones] as const];
    last = semitones;
    return points;
  });
}

export function highestSemitones(curve: PitchCurve): number {
  return curve.reduce((most, [, semitones]) => Math.max(most, semitones), 0);
}

const LOG_PER_SEMITONE = Math.LN2 / 12;

/** ∫ 2^(s/12) dt over `span` seconds in which s goes straight from `low` to `high`. */
function stretch(span: number, low: number, high: number): number {
  const rise = (high - low) * LOG_PER_SEMITONE;
  const level = Math.exp(low * LOG_PER_SEMITONE);
  return level * span * (Math.abs(rise) < 1e-9 ? 1 : Math.expm1(rise) / rise);
}

/** ∫ 2^(s(t)/12) dt from the pluck on, as a function of seconds that must be asked in rising order. */
export function bentTime(curve: PitchCurve): (seconds: number) => number {
  let [index, reached, bent] = [0, 0, 0];
  return (seconds) => {
    while (index < curve.length && curve[index]![0] <= seconds) {
      bent += between(curve, index, reached, curve[index]![0]);
      reached = Math.max(reached, curve[index]![0]);
      index += 1;
    }
    return bent + between(curve, index, reached, seconds);
  };
}

/** Of the stretch before point `index`, the part between two times. */
function between(curve: PitchCurve, index: number, from: number, to: number): number {
  if (to <= from) return 0;
  const [before, after] = [curve[index - 1], curve[index]];
  if (!before || !after) return stretch(to - from, (before ?? after)![1], (before ?? after)![1]);
  const at = (seconds: number) => before[1] + ((seconds - before[0]) / (after[0] - before[0])) * (after[1] - before[1]);
  return stretch(to - from, at(from), at(to));
}
