import type { Measures } from "../../bench/room/measures.ts";
import { type RoomTold, roomFor } from "../../bench/room/room.ts";
import type { Build } from "../../build-file/schema.ts";
import { type InputFault, PresolderError } from "../../errors.ts";

/** The answer, or what of the measures cannot be, by its path. */
export type RoomAsked = { readonly told: RoomTold } | { readonly faults: readonly InputFault[] };

export function askRoom(build: Build, measures: Measures): RoomAsked {
  try {
    return { told: roomFor(build, measures) };
  } catch (error) {
    if (error instanceof PresolderError) return { faults: error.faults };
    throw error;
  }
}
