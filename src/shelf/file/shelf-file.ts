import type { Guard } from "../guard.ts";

/**
 * A shelf as one file: JSON, `{"presolderShelf": 1, "saved": …, "guards": […]}` with the guards as `Guard` says, build files as
 * text. Each guard has a line of its own, so that a file that was cut short or damaged loses no other.
 */
export const SHELF_FILE_VERSION = 1;

export const SHELF_KEY = "presolderShelf";

export function writeShelfFile(guards: readonly Guard[], saved: Date): string {
  const head = `{"${SHELF_KEY}":${SHELF_FILE_VERSION},"saved":${JSON.stringify(saved.toISOString())},"guards":[`;
  return `${head}\n${guards.map((guard) => JSON.stringify(guard)).join(",\n")}\n]}\n`;
}
