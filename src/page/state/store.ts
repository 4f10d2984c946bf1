/** One state and those who watch parts of it. */
export class Store<State extends object> {
  #state: State;
  readonly #watchers = new Set<() => void>();

  constructor(initial: State) {
    this.#state = initial;
  }

  get state(): Readonly<State> {
    return this.#state;
  }

  set(patch: Partial<State>): void {
    this.#state = { ...this.#state, ...patch };
    for (const watcher of [...this.#watchers]) watcher();
  }

  /** Calls `effect` now and whenever one of the selected values is another one. @returns how to stop */
  watch<const Selected extends readonly unknown[]>(
    select: (state: Readonly<State>) => Selected,
    effect: (...selected: Selected) => void,
  ): () => void {
    let previous = select(this.#state);
    const watcher = () => {
      const next = select(this.#state);
      if (next.every((value, index) => Object.is(value, previous[index]))) return;
      previous = next;
      effect(...next);
    };
    this.#watchers.add(watcher);
    effect(...previous);
    return () => this.#watchers.delete(watcher);
  }

  /** As `watch`, for an effect that looks at the state itself. */
  watchAny(select: (state: Readonly<State>) => readonly unknown[], effect: () => void): () => void {
    return this.watch(select, (..._selected: readonly unknown[]) => effect());
  }
}
