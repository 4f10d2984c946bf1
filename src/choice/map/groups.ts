import type { EqualPair } from "./equal-sounds.ts";

/** Whether two groups go together: only where every cell of the one passes for every cell of the other. */
function joins(one: readonly number[], other: readonly number[], isEqual: (a: number, b: number) => boolean): boolean {
  return one.every((a) => other.every((b) => isEqual(a, b)));
}

/**
 * Cells in groups of which all pass for one another, the most alike joined first (complete linkage: T. Sørensen, Biologiske Skrifter 5, 1,
 * 1948; from memory). To pass for one goes from neighbour to neighbour no further: a chain of small steps, that ends where it is
 * heard, is no group. @param pairs the most alike first @returns groups of two and more, each rising, by their first cells
 */
export function equalGroups(count: number, pairs: readonly EqualPair[]): number[][] {
  const equal = Array.from({ length: count }, () => new Set<number>());
  for (const { first, second } of pairs) {
    equal[first]!.add(second);
    equal[second]!.add(first);
  }
  const groupOf: number[][] = Array.from({ length: count }, (_, cell) => [cell]);
  for (const { first, second } of pairs) {
    const [one, other] = [groupOf[first]!, groupOf[second]!];
    if (one === other || !joins(one, other, (a, b) => equal[a]!.has(b))) continue;
    one.push(...other);
    for (const cell of other) groupOf[cell] = one;
  }
  return [...new Set(groupOf)]
    .filter((group) => group.length > 1)
    .map((group) => group.sort((a, b) => a - b))
    .sort((a, b) => a[0]! - b[0]!);
}
