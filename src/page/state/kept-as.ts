/** Which guard of the shelf a guard on the bench is kept as. It goes with the guard through changes, undoing included. */
const kept = new WeakMap<object, string>();
const watchers = new Set<() => void>();

/** @param guard as `AppState.guard` @returns the id on the shelf, if any */
export function keptAs(guard: object): string | undefined {
  return kept.get(guard);
}

export function keepAs(guard: object, id: string): void {
  kept.set(guard, id);
  for (const effect of watchers) effect();
}

/** Calls the effect whenever a guard is kept as one of the shelf. */
export function whenKept(effect: () => void): void {
  watchers.add(effect);
}
