/** "A", "B", … for the ends of a joint in the order in which the sheet names them; none for a single one. */
export function letterOf(index: number, count: number): string {
  return count < 2 ? "" : String.fromCharCode("A".charCodeAt(0) + index);
}
