const KEY = "presolder.noted.1";
const MAX_KEPT = 500;

function read(): [string, string][] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    return Array.isArray(kept) ? (kept as [string, string][]) : [];
  } catch {
    return [];
  }
}

/** What was noted under a key, on an earlier visit too. */
export function notedUnder(key: string): string {
  return read().find(([name]) => name === key)?.[1] ?? "";
}

/** All that was noted under keys that begin so, by what follows. */
export function allNoted(start: string): ReadonlyMap<string, string> {
  return new Map(read().flatMap(([name, text]) => (name.startsWith(start) ? [[name.slice(start.length), text]] : [])));
}

/** Keeps a note on this device: readings of a closed guard are wanted again years later. */
export function note(key: string, text: string): void {
  const others = read().filter(([name]) => name !== key);
  const all = text === "" ? others : [...others, [key, text] as [string, string]];
  try {
    localStorage.setItem(KEY, JSON.stringify(all.slice(-MAX_KEPT)));
  } catch {
    // Without storage the note lasts until the page is closed, or goes on paper.
  }
}
