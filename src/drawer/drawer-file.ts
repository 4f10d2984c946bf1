import type { DrawerInput } from "./drawer-schema.ts";
import { drawerInput, type KeptDrawer } from "./kept-drawer.ts";

const KEY = "presolderDrawer";

/** A drawer as a file of its own. */
export function drawerFile(drawer: KeptDrawer): string {
  return `${JSON.stringify({ [KEY]: 1, drawer: drawerInput(drawer) }, null, 1)}\n`;
}

/** Whether a text begins as such a file does. */
export function isDrawerFile(text: string): boolean {
  return text.trimStart().slice(0, 40).replaceAll(/\s/g, "").startsWith(`{"${KEY}":`);
}

/** What stands in a drawer file; whether each part is one is for the reader of drawers. @throws Error where it is no such file */
export function fromDrawerFile(text: string): DrawerInput {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    content = undefined;
  }
  const { [KEY]: version, drawer } = (content ?? {}) as Record<string, unknown>;
  if (version !== 1 || typeof drawer !== "object" || drawer === null)
    throw new Error(`This is no drawer file as this page saves it (expected JSON that begins with {"${KEY}": 1).`);
  return drawer as DrawerInput;
}
