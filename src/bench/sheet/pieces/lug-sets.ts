/** Lugs joined to each other, by name. */
export class LugSets {
  readonly #parent = new Map<string, string>();

  #root(lug: string): string {
    let at = lug;
    for (let up = this.#parent.get(at); up !== undefined; up = this.#parent.get(at)) at = up;
    return at;
  }

  join(a: string, b: string): void {
    const [rootA, rootB] = [this.#root(a), this.#root(b)];
    if (rootA !== rootB) this.#parent.set(rootB, rootA);
  }

  areJoined(a: string, b: string): boolean {
    return this.#root(a) === this.#root(b);
  }
}
