/** Edit distance of Levenshtein: insertions, deletions and substitutions, each of cost one. */
export function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(substitution, previous[j]! + 1, current[j - 1]! + 1));
    }
    previous = current;
  }
  return previous[b.length]!;
}

const MAX_COMPARED = 64;

/** The known word nearest to what was written, or undefined where none is near. Case is ignored. */
export function nearestWord(written: string, known: Iterable<string>): string | undefined {
  const target = written.slice(0, MAX_COMPARED).toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(2, Math.floor(target.length / 2)) + 1;
  for (const word of known) {
    const distance = editDistance(target, word.slice(0, MAX_COMPARED).toLowerCase());
    if (distance < bestDistance) {
      bestDistance = distance;
      best = word;
    }
  }
  return best;
}

/** `; did you mean "tone1"?` where something is near, else a short list of what is known. */
export function suggestion(written: string, known: readonly string[]): string {
  const near = nearestWord(written, known);
  if (near !== undefined) return `; did you mean "${near}"?`;
  const shown = known.slice(0, 12).map((word) => `"${word}"`);
  return shown.length === 0 ? "" : `; known: ${shown.join(", ")}${known.length > 12 ? ", …" : ""}`;
}
