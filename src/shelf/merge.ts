import { amended, MAX_VERSIONS } from "./amend.ts";
import { CONTENT_FIELDS, differingFields, fieldsOf } from "./content.ts";
import type { Guard, Version } from "./guard.ts";
import { newId } from "./new-guard.ts";

/** A guard that is on the shelf and came with other content. */
export interface Clash {
  readonly here: Guard;
  readonly come: Guard;
  readonly fields: readonly (typeof CONTENT_FIELDS)[number][];
}

export interface Merge {
  /** Not on the shelf so far. */
  readonly added: readonly Guard[];
  /** On the shelf as they came, but with less of their history. */
  readonly grown: readonly Guard[];
  /** How many are on the shelf already as they came. */
  readonly same: number;
  readonly clashes: readonly Clash[];
}

const versionKey = ({ at, by, was }: Version) => JSON.stringify([at, by, fieldsIn(was)]);

function fieldsIn(was: Version["was"]): unknown {
  return CONTENT_FIELDS.map((field) => was[field] ?? null);
}

/** All that two histories of one guard hold, newest first. */
export function joinedHistory(a: readonly Version[], b: readonly Version[]): readonly Version[] {
  const known = new Set(a.map(versionKey));
  const more = b.filter((version) => !known.has(versionKey(version)));
  if (more.length === 0) return a;
  return [...a, ...more].sort((x, y) => (x.at < y.at ? 1 : x.at > y.at ? -1 : 0)).slice(0, MAX_VERSIONS);
}

/** What guards that come are to a shelf: nothing is decided for whoever has both. */
export function mergeOf(shelf: readonly Guard[], come: readonly Guard[]): Merge {
  const byId = new Map(shelf.map((guard) => [guard.id, guard]));
  const hasTwin = (guard: Guard) => shelf.some((other) => differingFields(other, guard).length === 0);
  const added: Guard[] = [];
  const grown: Guard[] = [];
  const clashes: Clash[] = [];
  let same = 0;
  for (const guard of come) {
    const here = byId.get(guard.id);
    const fields = here ? differingFields(here, guard) : [];
    if (!here) added.push(guard);
    else if (fields.length > 0) {
      // Kept as both at an earlier time.
      if (hasTwin(guard)) same += 1;
      else clashes.push({ here, come: guard, fields });
    } else {
      const history = joinedHistory(here.history, guard.history);
      if (history === here.history) same += 1;
      else grown.push({ ...here, history });
    }
  }
  return { added, grown, same, clashes };
}

/** A guard with what came in the place of its own, which stays in the history. */
export function takenOver(here: Guard, come: Guard, at: Date): Guard {
  const taken = amended(here, fieldsOf(come, differingFields(here, come)), { at, by: "import" });
  return { ...taken, history: joinedHistory(taken.history, come.history) };
}

/** The guard that came as one of its own beside the one on the shelf. */
export function keptBeside({ come }: Clash): Guard {
  return { ...come, id: newId() };
}
