import type { GuardLine } from "../../shelf/guard.ts";

/** The latest changed first; those of one moment by their ids, so that every tab and visit has them in one order. */
export function latestFirst<T extends Pick<GuardLine, "changed" | "id">>(lines: readonly T[]): readonly T[] {
  const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return [...lines].sort((a, b) => order(b.changed, a.changed) || order(a.id, b.id));
}
