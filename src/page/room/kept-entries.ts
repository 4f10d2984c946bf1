import { MAX_CAVITIES, MAX_PARTS } from "../../limits.ts";
import { type CavityEntry, type Entries, GUARD_FIELDS, NO_ENTRIES, PART_FIELDS, type PartEntry } from "./entries.ts";

const KEY = "presolder.room.1";

type Unknown = Readonly<Record<string, unknown>>;
const asRecord = (value: unknown): Unknown => (typeof value === "object" && value !== null ? (value as Unknown) : {});
const textOf = (value: unknown) => (typeof value === "string" ? value : "");

/** The texts of a record under the names that are known. */
function textsOf<Name extends string>(names: readonly Name[], value: unknown): Partial<Record<Name, string>> {
  const record = asRecord(value);
  const said = names.filter((name) => textOf(record[name]) !== "");
  return Object.fromEntries(said.map((name) => [name, textOf(record[name])])) as Partial<Record<Name, string>>;
}

function cavityFrom(value: unknown): CavityEntry {
  const { name, depth, points, tolerance } = asRecord(value);
  return { name: textOf(name), depth: textOf(depth), points: textOf(points), tolerance: textOf(tolerance) };
}

/** What this browser keeps of a guitar's body, which is the same for every guard. */
export function keptEntries(): Entries {
  try {
    const kept = asRecord(JSON.parse(localStorage.getItem(KEY) ?? "null"));
    if (!Array.isArray(kept.cavities)) return NO_ENTRIES;
    const parts = Object.entries(asRecord(kept.parts)).slice(0, MAX_PARTS);
    return {
      cavities: kept.cavities.slice(0, MAX_CAVITIES).map(cavityFrom),
      parts: Object.fromEntries(parts.map(([name, each]): [string, PartEntry] => [name, textsOf(PART_FIELDS, each)])),
      guard: textsOf(GUARD_FIELDS, kept.guard),
    };
  } catch {
    return NO_ENTRIES;
  }
}

export function keepEntries(entries: Entries): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(entries));
  } catch {
    // Without storage they last until the page is closed.
  }
}
