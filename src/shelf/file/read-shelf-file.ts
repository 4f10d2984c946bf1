import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import type { Guard } from "../guard.ts";
import { checkDrawer } from "./check-drawer.ts";
import { checkGuard } from "./check-guard.ts";
import { CheckError } from "./checks.ts";
import { DRAWER_LINE, SHELF_FILE_VERSION, SHELF_KEY } from "./shelf-file.ts";

/** A guard of a file that cannot be taken over. */
export interface EntryFault {
  /** "guard 3, “Guard B”". */
  readonly entry: string;
  /** Of the field at fault; empty where the whole entry is. */
  readonly path: string;
  readonly message: string;
}

export interface ShelfRead {
  readonly guards: readonly Guard[];
  readonly faults: readonly EntryFault[];
  /** The drawer that came with the guards, its parts still to be read; absent where none did. */
  readonly drawer?: KeptDrawer;
  /** What is wrong with it, so that it was left out. */
  readonly drawerFault?: Omit<EntryFault, "entry">;
}

/** What is no shelf file at all. */
export class ShelfFileError extends Error {}

/** A head is shorter. */
const HEAD_CHARS = 200;
const LINE_BROKEN = "breaks off or has a wrong character; expected a whole JSON object on its line";

function entryName(value: unknown, index: number): string {
  const name = typeof value === "object" && value !== null ? (value as { name?: unknown }).name : undefined;
  return typeof name === "string" && name !== "" ? `guard ${index + 1}, “${name.slice(0, 60)}”` : `guard ${index + 1}`;
}

const UNREADABLE = Symbol("unreadable");

/** Each entry by itself: what is wrong with one keeps no other back. */
export function readEntries(entries: readonly unknown[]): ShelfRead {
  const guards = new Map<string, Guard>();
  const faults: EntryFault[] = [];
  for (const [index, value] of entries.entries()) {
    try {
      if (value === UNREADABLE) throw new CheckError("", LINE_BROKEN);
      const guard = checkGuard(value);
      if (guards.has(guard.id))
        throw new CheckError("id", `is that of an earlier guard, ${guard.id}; expected another`);
      guards.set(guard.id, guard);
    } catch (error) {
      if (!(error instanceof CheckError)) throw error;
      faults.push({ entry: entryName(value, index), path: error.path, message: error.message });
    }
  }
  return { guards: [...guards.values()], faults };
}

/** @param value undefined: the file carries none */
function readDrawer(value: unknown): Pick<ShelfRead, "drawer" | "drawerFault"> {
  if (value === undefined) return {};
  try {
    if (value === UNREADABLE) throw new CheckError("", LINE_BROKEN);
    return { drawer: checkDrawer(value) };
  } catch (error) {
    if (!(error instanceof CheckError)) throw error;
    return { drawerFault: { path: error.path, message: error.message } };
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return UNREADABLE;
  }
}

const parseLine = (line: string) => parse(line.replace(/,\s*$/, ""));

/** The lines between the file's head and its end, whichever of those are there still, and the drawer's. */
function linesOf(text: string): { readonly guards: string[]; readonly drawer: unknown } {
  const lines = text.split("\n").filter((line) => line.trim() !== "");
  if (lines[0]?.includes(SHELF_KEY)) lines.shift();
  const last = lines.at(-1)?.trim() ?? "";
  if (!last.startsWith("]")) return { guards: lines, drawer: undefined };
  const guards = lines.slice(0, -1);
  if (last === "]}" || last === "]") return { guards, drawer: undefined };
  return { guards, drawer: last.startsWith(DRAWER_LINE) ? parse(last.slice(DRAWER_LINE.length, -1)) : UNREADABLE };
}

const NO_SHELF = `this is no shelf file as this page saves it (expected JSON that begins with {"${SHELF_KEY}":${SHELF_FILE_VERSION})`;

/** Of a file that is no JSON as a whole, each guard that is still whole on its line. */
function salvaged(text: string): ShelfRead {
  const { guards, drawer } = linesOf(text);
  const read = { ...readEntries(guards.map(parseLine)), ...readDrawer(drawer) };
  const isShelf = text.slice(0, HEAD_CHARS).includes(SHELF_KEY);
  if (read.guards.length > 0 || read.drawer || (isShelf && read.faults.length > 0)) return read;
  throw new ShelfFileError(isShelf ? "this shelf file breaks off before its first guard" : NO_SHELF);
}

/**
 * Reads a shelf file as far as it goes.
 * @returns the guards that are in order, and for each other one what is wrong with it
 * @throws ShelfFileError where the file is none, or of a later version
 */
export function readShelfFile(text: string): ShelfRead {
  const content = parse(text);
  if (content === UNREADABLE) return salvaged(text);
  if (typeof content !== "object" || content === null || !(SHELF_KEY in content)) throw new ShelfFileError(NO_SHELF);
  const { [SHELF_KEY]: version, guards, drawer } = content as Record<string, unknown>;
  if (version !== SHELF_FILE_VERSION)
    throw new ShelfFileError(
      `this shelf file is of version ${JSON.stringify(version)?.slice(0, 20)}, which this page does not know; expected ${SHELF_FILE_VERSION}. Load the page again for its latest version.`,
    );
  if (!Array.isArray(guards))
    throw new ShelfFileError(`"guards" is missing in this shelf file; expected a list of them`);
  return { ...readEntries(guards), ...readDrawer(drawer) };
}
