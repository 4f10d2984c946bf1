import type { Finding } from "../../../src/bench/audit/audit.ts";
import type { Changes, Guard } from "./guards.ts";

/** A well-wired guard, what is changed about it, and what the audit must then say. */
export interface WrongBuild {
  readonly wrong: string;
  readonly guard: Guard;
  readonly changes: Changes;
  readonly expected: Partial<Finding>;
}

export const rewire = (remove: Changes["remove"], add: Changes["add"]): Changes => ({
  ...(remove ? { remove } : {}),
  ...(add ? { add } : {}),
});
