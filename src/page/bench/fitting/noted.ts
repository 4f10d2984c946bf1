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
