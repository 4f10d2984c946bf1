/** What a guard on the shelf is to its owner, from the wish to the drawer of old parts. */
export const GUARD_STATES = ["wanted", "wired", "in the guitar", "retired"] as const;
export type GuardState = (typeof GUARD_STATES)[number];

/** One value that was read off a meter or measured otherwise, as it was written. */
export interface KeptValue {
  /** "jack, lever 1, volume at 10", or the part's name and what of it. */
  readonly what: string;
  /** "7.94k", "open", "2.52 H ± 0.02". */
  readonly read: string;
}

/** What was measured on a guard in one go. */
export interface KeptReadings {
  readonly id: string;
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly note: string;
  readonly values: readonly KeptValue[];
}

/** What the person and the page write on a guard. */
export interface GuardContent {
  readonly name: string;
  readonly guitar: string;
  readonly state: GuardState;
  /** YYYY-MM-DD; the day it was wired or wished for. */
  readonly made: string;
  readonly notes: string;
  /** The build file's text, byte for byte as it was kept; it may hold a plan, the long form, or a file with faults. */
  readonly file: string;
  readonly readings: readonly KeptReadings[];
}

/** Why something stands in a guard's history. */
export const REPLACED_BY = ["change", "restore", "import", "another tab"] as const;
export type ReplacedBy = (typeof REPLACED_BY)[number];

/** What a change took the place of: those fields alone that it changed, as they were before. */
export interface Version {
  /** When it was replaced: ISO 8601, UTC. */
  readonly at: string;
  readonly by: ReplacedBy;
  readonly was: Partial<GuardContent>;
}

/** A guard on the shelf. */
export interface Guard extends GuardContent {
  /** A UUID; it stays the same on every shelf that the guard is carried to. */
  readonly id: string;
  /** When it was last changed: ISO 8601, UTC. */
  readonly changed: string;
  /** Newest first, at most `MAX_VERSIONS`. */
  readonly history: readonly Version[];
}

/** What a list shows of a guard: all but the build file and what it was, which may be large. */
export interface GuardLine extends Omit<Guard, "file" | "history"> {
  /** Of its build file's text; the same for the same text. */
  readonly fileMark: string;
  /** What a search looks through, in the search's own spelling. */
  readonly words: string;
}
