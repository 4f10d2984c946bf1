/**
 * Kruskal's words for stress-1 (Psychometrika 29, 1, 1964, table 3), each up to so much. He gave them for maps that keep the order of
 * distances alone; those that keep distances come out higher, so that the words are on the careful side.
 */
const WORDS: readonly (readonly [upTo: number, word: string])[] = [
  [0.025, "excellent"],
  [0.05, "good"],
  [0.1, "fair"],
];

/** "Stress 0.042: good …". @param stress1 of the map, 0 or more */
export function stressWords(stress1: number): string {
  const word = WORDS.find(([upTo]) => stress1 <= upTo)?.[1] ?? "poor";
  const trust =
    word === "poor"
      ? "near and far on the map are only a hint; go by the figures beside it"
      : word === "fair"
        ? "near and far are right on the whole, single pairs may be off"
        : "what lies near on the map sounds alike";
  return `Stress ${stress1.toFixed(3)}, ${word} by Kruskal's table: ${trust}.`;
}
