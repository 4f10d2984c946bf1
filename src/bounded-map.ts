/** A map that forgets its oldest entry where one more would be too many. */
export class BoundedMap<Key, Value> extends Map<Key, Value> {
  readonly #limit: number;

  /** @param limit at least 1 */
  constructor(limit: number) {
    super();
    this.#limit = limit;
  }

  override set(key: Key, value: Value): this {
    super.set(key, value);
    if (this.size > this.#limit) this.delete(this.keys().next().value!);
    return this;
  }
}
