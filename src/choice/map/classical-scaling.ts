import { symmetricEigen } from "../fit/symmetric-eigen.ts";

/** Places on the map: x0, y0, x1, y1 …, in the unit of the distances. */
export type Places = Float64Array;

function centred(points: readonly Float64Array[]): Float64Array[] {
  const dimensions = points[0]?.length ?? 0;
  const mean = new Float64Array(dimensions);
  for (const point of points) for (let d = 0; d < dimensions; d++) mean[d]! += point[d]! / points.length;
  return points.map((point) => point.map((value, d) => value - mean[d]!));
}

/** Columns of the two greatest eigenvalues; fewer where there are fewer dimensions. */
function leadingAxes(scatter: Float64Array, size: number): Float64Array[] {
  const { values, vectors } = symmetricEigen(scatter, size);
  const order = Array.from(values.keys()).sort((a, b) => values[b]! - values[a]!);
  return order
    .slice(0, 2)
    .map((column) => Float64Array.from({ length: size }, (_, row) => vectors[row * size + column]!));
}

/**
 * Classical scaling to two dimensions. Of distances that are Euclidean it is the projection on the two leading principal axes (W. S.
 * Torgerson, Psychometrika 17, 401, 1952; J. C. Gower, Biometrika 53, 325, 1966), so that the matrix whose eigenvectors are wanted has as
 * many rows as there are bands, and not as there are points.
 * @param points all of one length; distances are root mean squares over it
 */
export function classicalScaling(points: readonly Float64Array[]): Places {
  const places = new Float64Array(2 * points.length);
  const size = points[0]?.length ?? 0;
  if (size === 0) return places;
  const own = centred(points);
  const scatter = new Float64Array(size * size);
  for (const point of own)
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) scatter[i * size + j]! += point[i]! * point[j]!;
  const scale = 1 / Math.sqrt(size);
  for (const [axis, direction] of leadingAxes(scatter, size).entries())
    for (const [index, point] of own.entries())
      places[2 * index + axis] = scale * point.reduce((sum, value, d) => sum + value * direction[d]!, 0);
  return places;
}
