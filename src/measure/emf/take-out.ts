function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function subtract(from: Float64Array, along: Float64Array, share: number): void {
  for (let i = 0; i < from.length; i++) from[i]! -= share * along[i]!;
}

/** Columns made of length 1 and at right angles to each other, one after the other (Gram and Schmidt). */
function orthonormal(columns: readonly Float64Array[]): Float64Array[] {
  const basis: Float64Array[] = [];
  for (const column of columns) {
    const rest = column.slice();
    for (const each of basis) subtract(rest, each, dot(each, rest));
    const length = Math.sqrt(dot(rest, rest));
    basis.push(rest.map((value) => value / length));
  }
  return basis;
}

/**
 * Residuals with what a level and the moves explain taken out, so that a fit needs to look for neither (separable least squares;
 * G. H. Golub and V. Pereyra, SIAM J. Numer. Anal. 10, 413, 1973). Behind them, each move's multiple in standard deviations of its own.
 */
export function takerOut(sigma: readonly number[], moves: readonly (readonly number[])[]) {
  const count = sigma.length;
  const column = (values: (i: number) => number, place?: number) => {
    const rows = new Float64Array(count + moves.length);
    for (let i = 0; i < count; i++) rows[i] = values(i) / sigma[i]!;
    if (place !== undefined) rows[count + place] = -1;
    return rows;
  };
  const basis = orthonormal([column(() => 1), ...moves.map((move, k) => column((i) => move[i]!, k))]);
  return (residual: (i: number) => number): Float64Array => {
    const rows = column(residual);
    for (const each of basis) subtract(rows, each, dot(each, rows));
    return rows;
  };
}
