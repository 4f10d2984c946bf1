/** A cylindrical magnet, magnetised along its axis. */
export interface RodMagnet {
  readonly radiusMetres: number;
  readonly lengthMetres: number;
}

/**
 * Field on the axis, at a distance from the face, over the remanence: ½·[(z+L)/√((z+L)²+R²) − z/√(z²+R²)] (for one, J. M.
 * Camacho and V. Sosa, Rev. Mex. Fís. E 59, 8–17, 2013; from memory, held to the sum of current loops in the tests).
 */
export function axialField({ radiusMetres: R, lengthMetres: L }: RodMagnet, z: number): number {
  return ((z + L) / Math.hypot(z + L, R) - z / Math.hypot(z, R)) / 2;
}

/** Its slope along the axis, per metre; negative, as the field falls. */
export function axialSlope({ radiusMetres: R, lengthMetres: L }: RodMagnet, z: number): number {
  return (R * R * (Math.hypot(z + L, R) ** -3 - Math.hypot(z, R) ** -3)) / 2;
}

/** Pull on a thin steel string far from saturation goes as the slope of B²; only ratios mean anything. */
export function relativePull(magnet: RodMagnet, gapMetres: number): number {
  return -2 * axialField(magnet, gapMetres) * axialSlope(magnet, gapMetres);
}
