const KEY = "presolder.liked.1";

function kept(): string[] {
  try {
    const keys = JSON.parse(localStorage.getItem(KEY) ?? "[]") as unknown;
    return Array.isArray(keys) ? keys.filter((key): key is string => typeof key === "string") : [];
  } catch {
    return [];
  }
}

/** Cells that the person likes, by their keys; this browser keeps them. */
export class Liked {
  readonly #keys = new Set(kept());

  has(key: string): boolean {
    return this.#keys.has(key);
  }

  toggle(key: string): void {
    if (!this.#keys.delete(key)) this.#keys.add(key);
    try {
      localStorage.setItem(KEY, JSON.stringify([...this.#keys]));
    } catch {
      // Without storage it lasts until the page is closed.
    }
  }
}
