import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import { MAX_DRAWER_ITEMS, MAX_DRAWER_KITS, MAX_DRAWER_WIRES } from "../../limits.ts";
import { MAX_LINE_CHARS } from "../bounds.ts";
import { type Check, CheckError, listOf, objectOf, recordOf, refuse, textLike, textUpTo } from "./checks.ts";

const id = textLike(/^[\w-]{1,60}$/, "up to 60 letters, digits and hyphens");

/** An entry with its id; the rest of it is for the reader of drawers. */
const entry: Check<{ readonly id: string }> = (value, path) => {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return refuse(value, path, "an object");
  id((value as { id?: unknown }).id, `${path}.id`);
  return value as { readonly id: string };
};

/** No two entries may be one to whoever writes on them. */
function entriesUpTo(most: number): Check<readonly { readonly id: string }[]> {
  const list = listOf(entry, most);
  return (value, path) => {
    const entries = list(value, path);
    const known = new Set<string>();
    for (const [index, each] of entries.entries()) {
      if (known.has(each.id))
        throw new CheckError(`${path}.${index}.id`, `is that of an earlier entry, ${each.id}; expected another`);
      known.add(each.id);
    }
    return entries;
  };
}

const isCounted: Check<boolean> = (value, path) =>
  typeof value === "boolean" ? value : refuse(value, path, "true or false");

const drawer = objectOf({
  currency: textUpTo(MAX_LINE_CHARS),
  items: entriesUpTo(MAX_DRAWER_ITEMS),
  kits: entriesUpTo(MAX_DRAWER_KITS),
  wires: entriesUpTo(MAX_DRAWER_WIRES),
  counted: recordOf(isCounted),
});

/**
 * A drawer as a shelf file has it: lists, ids and what is counted. Whether each entry is a part, a kit or a reel is for `drawerSchema`.
 * @throws CheckError naming the field, its value and what was expected
 */
export function checkDrawer(value: unknown): KeptDrawer {
  return { id: "drawer", ...drawer(value, "") } as KeptDrawer;
}
