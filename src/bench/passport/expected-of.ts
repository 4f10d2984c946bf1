/** What was expected in place of a name that there is not: "; expected neck, middle, bridge". */
export function expectedOf(names: readonly string[]): string {
  return names.length === 0 ? "; it has none" : `; expected ${names.join(", ")}`;
}
