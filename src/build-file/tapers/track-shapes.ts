/**
 * How the resistance of a carbon track goes with the turn of its shaft: shares of the track below the wiper at shares of the
 * mechanical turn. Between the points straight pieces and smooth bends take turns, beginning with a straight one. The tapers of
 * 5 to 30 % are a maker's specification as fitted by B. Holmes and M. van Walstijn, Potentiometer law modelling and
 * identification, DAFx-19, Birmingham 2019 (companion data, repository bholmesqub/DAFx19); the linear one is the same source's.
 */
export interface TrackShape {
  readonly turns: readonly number[];
  readonly shares: readonly number[];
}

const TURNS = [0, 0.05, 0.3, 0.51, 0.7, 0.92, 0.97, 1];

/** From the least share at half turn to the most. */
export const TRACK_SHAPES: readonly TrackShape[] = [
  { turns: TURNS, shares: [0, 0.003, 0.015, 0.057, 0.284, 0.954, 0.999, 1] },
  { turns: TURNS, shares: [0, 0.003, 0.028, 0.111, 0.363, 0.959, 0.999, 1] },
  { turns: TURNS, shares: [0, 0.003, 0.063, 0.162, 0.41, 0.958, 1, 1] },
  { turns: TURNS, shares: [0, 0.004, 0.084, 0.21, 0.443, 0.952, 1, 1] },
  { turns: TURNS, shares: [0, 0.002, 0.123, 0.259, 0.501, 0.954, 0.999, 1] },
  { turns: TURNS, shares: [0, 0.004, 0.151, 0.311, 0.542, 0.965, 1, 1] },
  { turns: [0, 0.05, 0.125, 0.932, 1], shares: [0, 0, 0.071, 0.997, 1] },
];
