import type { Build } from "../build-file/schema.ts";
import type { OwnedPart } from "./drawer-schema.ts";

/** One part that a guard takes. */
export interface Need {
  /** Which of the guards, from 0. */
  readonly guard: number;
  /** The part's name in its build. */
  readonly name: string;
  readonly part: OwnedPart;
}

/** What a guard takes that can be bought: points of the guitar itself are not. */
export function needsOf(build: Pick<Build, "parts">, guard = 0): Need[] {
  return Object.entries(build.parts).flatMap(([name, part]) =>
    part.kind === "terminal" ? [] : [{ guard, name, part }],
  );
}
