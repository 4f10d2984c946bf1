/** Gaps of one pickup under the outer strings, from the string's underside, pressed at the last fret, to the pole. */
export interface Gaps {
  readonly bassMetres: number;
  readonly trebleMetres: number;
}

/** What both screws have been moved by, in metres; more is lower. */
export type Travels = Gaps;

/** The gap under a string, 1 the highest of `count`: straight from one outer string to the other. */
export function gapUnder({ bassMetres, trebleMetres }: Gaps, string: number, count: number): number {
  const across = count > 1 ? (string - 1) / (count - 1) : 0.5;
  return trebleMetres + (bassMetres - trebleMetres) * across;
}

/**
 * How far each screw travels between two heights. The screws stand farther apart than the outer strings, by `lever`, so that a
 * tilt asks more of them than of the gaps.
 */
export function travelsBetween(from: Gaps, to: Gaps, lever: number): Travels {
  const bass = to.bassMetres - from.bassMetres;
  const treble = to.trebleMetres - from.trebleMetres;
  const middle = (bass + treble) / 2;
  const tilt = ((bass - treble) / 2) * lever;
  return { bassMetres: middle + tilt, trebleMetres: middle - tilt };
}

/** The inverse of `travelsBetween`. */
export function gapsAfter(from: Gaps, travels: Travels, lever: number): Gaps {
  const middle = (travels.bassMetres + travels.trebleMetres) / 2;
  const tilt = (travels.bassMetres - travels.trebleMetres) / 2 / lever;
  return { bassMetres: from.bassMetres + middle + tilt, trebleMetres: from.trebleMetres + middle - tilt };
}
