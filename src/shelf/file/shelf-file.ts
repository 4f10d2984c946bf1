import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import { CONTENT_FIELDS } from "../content.ts";
import type { Guard } from "../guard.ts";

/**
 * A shelf as one file: JSON, `{"presolderShelf": 1, "saved": …, "guards": […]}` with the guards as `Guard` says, build files as
 * text, and after them the drawer's parts, `"drawer": {…}`, where it has any. Each guard has a line of its own, and so has the drawer, so
 * that a file that was cut short or damaged loses no other.
 */
export const SHELF_FILE_VERSION = 1;

export const SHELF_KEY = "presolderShelf";

/** Every field of a guard, its readings and its history, in the order in which each is written: so the same guard is the same line. */
const IN_ORDER = [
  ...["id", ...CONTENT_FIELDS],
  ...["date", "note", "values", "what", "read"],
  ...["changed", "history", "at", "by", "was"],
];

/** What the line of a drawer begins with: the end of the guards. */
export const DRAWER_LINE = '],"drawer":';

function drawerText({ currency, items, kits, wires, counted }: KeptDrawer): string {
  return JSON.stringify({ currency, items, kits, wires, counted });
}

/** @param drawer the parts in it, where the file is to carry them */
export function writeShelfFile(guards: readonly Guard[], saved: Date, drawer?: KeptDrawer): string {
  const head = `{"${SHELF_KEY}":${SHELF_FILE_VERSION},"saved":${JSON.stringify(saved.toISOString())},"guards":[`;
  const end = drawer ? `${DRAWER_LINE}${drawerText(drawer)}}` : "]}";
  return `${head}\n${guards.map((guard) => JSON.stringify(guard, IN_ORDER)).join(",\n")}\n${end}\n`;
}
