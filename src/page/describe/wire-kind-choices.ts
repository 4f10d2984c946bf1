import type { WireKind } from "../../build-file/wire-kinds.ts";

/** The kinds of wire in the trade's words, by what is done to their ends. */
export const WIRE_KIND_CHOICES: readonly (readonly [WireKind, string])[] = [
  ["cloth", "cloth, pushed back"],
  ["plastic", "plastic, stripped"],
  ["bare", "bare"],
  ["screened", "screened"],
];
