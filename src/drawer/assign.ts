/** A cost that stands for "not together"; sums of others must stay far under it. */
export const NEVER = Number.POSITIVE_INFINITY;

/**
 * The assignment of every row to a column of its own with the least sum of costs, by shortest augmenting paths with potentials (Kuhn
 * 1955, Munkres 1957; the O(rows²·columns) form is common practice).
 * @param costs rows of equal length, at least as long as there are rows, and of finite numbers: a row that may stay without brings a
 * column of its own for that
 * @returns the column of each row
 */
export function assign(costs: readonly Float64Array[]): number[] {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  const ofRow = new Float64Array(rows + 1);
  const ofColumn = new Float64Array(columns + 1);
  /** Rows from 1 by column from 1; column 0 holds the row under way. */
  const rowAt = new Int32Array(columns + 1);
  const before = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    rowAt[0] = row;
    let column = 0;
    const least = new Float64Array(columns + 1).fill(NEVER);
    const isUsed = new Uint8Array(columns + 1);
    do {
      isUsed[column] = 1;
      const at = rowAt[column]!;
      let [delta, next] = [NEVER, 0];
      for (let j = 1; j <= columns; j++) {
        if (isUsed[j]) continue;
        const reduced = costs[at - 1]![j - 1]! - ofRow[at]! - ofColumn[j]!;
        if (reduced < least[j]!) {
          least[j] = reduced;
          before[j] = column;
        }
        if (least[j]! < delta) [delta, next] = [least[j]!, j];
      }
      for (let j = 0; j <= columns; j++) {
        if (isUsed[j]) {
          ofRow[rowAt[j]!]! += delta;
          ofColumn[j]! -= delta;
        } else least[j]! -= delta;
      }
      column = next;
    } while (rowAt[column] !== 0);
    do {
      const from = before[column]!;
      rowAt[column] = rowAt[from]!;
      column = from;
    } while (column !== 0);
  }
  const columnOf = new Array<number>(rows);
  for (let j = 1; j <= columns; j++) if (rowAt[j]! > 0) columnOf[rowAt[j]! - 1] = j - 1;
  return columnOf;
}
