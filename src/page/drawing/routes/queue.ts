/** A binary heap of whole numbers by their keys, the least first. */
export class Queue {
  #keys = new Float64Array(1024);
  #values = new Int32Array(1024);
  #count = 0;

  get isEmpty(): boolean {
    return this.#count === 0;
  }

  clear(): void {
    this.#count = 0;
  }

  push(key: number, value: number): void {
    if (this.#count === this.#keys.length) this.#grow();
    const [keys, values] = [this.#keys, this.#values];
    let at = this.#count++;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (keys[parent]! <= key) break;
      keys[at] = keys[parent]!;
      values[at] = values[parent]!;
      at = parent;
    }
    keys[at] = key;
    values[at] = value;
  }

  leastKey(): number {
    return this.#count === 0 ? Number.POSITIVE_INFINITY : this.#keys[0]!;
  }

  /** Takes the value of the least key out. */
  pop(): number {
    const [keys, values] = [this.#keys, this.#values];
    const taken = values[0]!;
    const count = --this.#count;
    const [key, value] = [keys[count]!, values[count]!];
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= count) break;
      if (child + 1 < count && keys[child + 1]! < keys[child]!) child += 1;
      if (keys[child]! >= key) break;
      keys[at] = keys[child]!;
      values[at] = values[child]!;
      at = child;
    }
    keys[at] = key;
    values[at] = value;
    return taken;
  }

  #grow(): void {
    const [keys, values] = [this.#keys, this.#values];
    this.#keys = new Float64Array(2 * keys.length);
    this.#values = new Int32Array(2 * values.length);
    this.#keys.set(keys);
    this.#values.set(values);
  }
}
