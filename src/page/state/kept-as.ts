/** Which guard of the shelf a guard on the bench is kept as. It goes with the guard through changes, undoing included. */
const kept = new WeakMap<object, string>();

/** @param guard as `AppState.guard` @returns the id on the shelf, if any */
export function keptAs(guard: object): string | undefined {
  return kept.get(guard);
}

export function keepAs(guard: object, id: string): void {
  kept.set(guard, id);
}
