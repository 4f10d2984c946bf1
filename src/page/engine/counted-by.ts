/** Things of one name together, in the order in which each name comes first. */
export function countedBy<T>(all: readonly T[], name: (each: T) => string): { what: string; count: number; of: T[] }[] {
  const known = new Map<string, T[]>();
  for (const each of all) known.set(name(each), [...(known.get(name(each)) ?? []), each]);
  return [...known].map(([what, of]) => ({ what, count: of.length, of }));
}
