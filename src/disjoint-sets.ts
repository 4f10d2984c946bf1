/** Union–find over the integers 0 … size − 1, with path halving; the smaller root survives, so that results are stable. */
export class DisjointSets {
  readonly #parent: Int32Array;

  constructor(sizeOrOther: number | DisjointSets) {
    this.#parent =
      typeof sizeOrOther === "number"
        ? Int32Array.from({ length: sizeOrOther }, (_, index) => index)
        : sizeOrOther.#parent.slice();
  }

  find(member: number): number {
    const parent = this.#parent;
    let at = member;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  }

  join(a: number, b: number): void {
    const rootA = this.find(a);
    const rootB = this.find(b);
    if (rootA !== rootB) this.#parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
  }

  /** Parts all sets into single members again. */
  clear(): void {
    for (let member = 0; member < this.#parent.length; member++) this.#parent[member] = member;
  }

  /** A label 0 … count − 1 for every member: equal labels, same set; labels in order of each set's first member. */
  labels(): { labels: Int32Array; count: number } {
    const size = this.#parent.length;
    const labels = new Int32Array(size);
    let count = 0;
    for (let member = 0; member < size; member++) {
      const root = this.find(member);
      labels[member] = root === member ? count++ : labels[root]!;
    }
    return { labels, count };
  }
}
