import type { Guard } from "../../shelf/guard.ts";
import { ShelfFault } from "./shelf.ts";

const FULL =
  "The browser has no room left for this page, so this was not kept. What is on the shelf is still there: save it as a file, then make room or delete guards.";

/** What the browser's storage threw, as the shelf says it. @param unkept what was to be kept */
export function shelfFaultOf(error: unknown, unkept: readonly Guard[]): ShelfFault {
  if (error instanceof ShelfFault) return error;
  const { name, message } = error as Error;
  if (name === "QuotaExceededError") return new ShelfFault("full", FULL, unkept);
  return new ShelfFault("refused", `The browser did not store this (${message || name}), so it was not kept.`, unkept);
}
