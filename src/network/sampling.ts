/** Polynomials are in s/OMEGA0: the middle of the decades between a tone cap's corner and a coil's resonance, in rad/s. */
export const OMEGA0 = 2 * Math.PI * 5000;

/** At which frequencies a network is solved, and at which the polynomials are held to it before they are used. */
export interface Sampling {
  /** Beyond so many powers of s it is not worth trying. */
  readonly mostPowers: number;
  /** Radii in units of OMEGA0 of the circles in the plane of s, about its origin. */
  readonly radii: readonly number[];
  readonly checksHz: readonly number[];
}

/** Enough for up to a dozen reactive parts. */
export const ONE_CIRCLE: Sampling = { mostPowers: 16, radii: [1], checksHz: [20, 20_000] };
/**
 * For more of them: a coefficient comes out best on a circle of which it makes up a good part, and those of many powers do so on
 * circles far apart.
 */
export const THREE_CIRCLES: Sampling = {
  mostPowers: 64,
  radii: [0.03, 0.24, 1.92],
  checksHz: [20, 300, 1500, 4000, 8000, 20_000],
};
