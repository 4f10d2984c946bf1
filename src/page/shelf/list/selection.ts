/** The guards that are ticked. */
export class Selection {
  readonly #ids = new Set<string>();
  readonly #changed: () => void;

  constructor(changed: () => void) {
    this.#changed = changed;
  }

  get ids(): readonly string[] {
    return [...this.#ids];
  }

  has(id: string): boolean {
    return this.#ids.has(id);
  }

  set(ids: readonly string[], isSelected: boolean): void {
    for (const id of ids) {
      if (isSelected) this.#ids.add(id);
      else this.#ids.delete(id);
    }
    this.#changed();
  }

  /** Lets go of those that are not on the shelf any more. */
  keepOnly(there: readonly { readonly id: string }[]): void {
    const known = new Set(there.map(({ id }) => id));
    this.set(
      this.ids.filter((id) => !known.has(id)),
      false,
    );
  }
}
