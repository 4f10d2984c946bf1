import { fieldsOf, isSame } from "./content.ts";
import type { Guard, GuardContent, ReplacedBy, Version } from "./guard.ts";

/** Kept of one guard: a year of weekly changes; the oldest goes first. */
export const MAX_VERSIONS = 50;

interface How {
  readonly at: Date;
  readonly by: ReplacedBy;
  /** What the person saw when they made the change, where that may no longer be what stands there. */
  readonly seen?: Partial<GuardContent>;
}

export function withVersion(history: readonly Version[], version: Version): readonly Version[] {
  return [version, ...history].slice(0, MAX_VERSIONS);
}

/**
 * A guard with some fields changed. The history gets the build file that was replaced, and whatever the person cannot have
 * seen: what another tab wrote since, or what an import or a restore takes the place of.
 */
export function amended(guard: Guard, patch: Partial<GuardContent>, { at, by, seen = {} }: How): Guard {
  const keys = Object.keys(patch) as (keyof GuardContent)[];
  const changed = keys.filter((key) => !isSame(key, guard, patch));
  if (changed.length === 0) return guard;
  const isUnseen = (key: keyof GuardContent) => key in seen && !isSame(key, guard, seen);
  const kept = changed.filter((key) => by !== "change" || key === "file" || isUnseen(key));
  const version: Version = {
    at: at.toISOString(),
    by: by === "change" && kept.some(isUnseen) ? "another tab" : by,
    was: fieldsOf(guard, kept),
  };
  const history = kept.length > 0 ? withVersion(guard.history, version) : guard.history;
  return { ...guard, ...patch, changed: at.toISOString(), history };
}

/** A guard as it was at a place of its history; what it is now goes into the history. */
export function restored(guard: Guard, version: Version, at: Date): Guard {
  return amended(guard, version.was, { at, by: "restore" });
}
