/** What one guard brings that no other does. */
export interface Added {
  readonly guard: number;
  /** Its cells that no cell of another guard passes for, rising. */
  readonly cells: readonly number[];
  /** How many cells it has on the map. */
  readonly of: number;
}

/** @param guards of every cell, its guard's number @param equals of every cell, those that pass for it @param count of guards */
export function addedByGuards(
  guards: readonly number[],
  equals: readonly (readonly number[])[],
  count: number,
): Added[] {
  const added = Array.from({ length: count }, (_, guard) => ({ guard, cells: [] as number[], of: 0 }));
  for (const [cell, guard] of guards.entries()) {
    const own = added[guard]!;
    own.of += 1;
    if (equals[cell]!.every((other) => guards[other] === guard)) own.cells.push(cell);
  }
  return added;
}

/** Of every cell in a list, the guards that have it: its own, and those with a cell that passes for it; rising. */
export function guardsThatHave(
  cells: readonly number[],
  guards: readonly number[],
  equals: readonly (readonly number[])[],
): number[][] {
  return cells.map((cell) =>
    [...new Set([guards[cell]!, ...equals[cell]!.map((other) => guards[other]!)])].sort((a, b) => a - b),
  );
}
