import { type InputFault, PresolderError } from "../../src/errors.ts";

/** The faults with which reading fails; fails itself where it does not. */
export function faultsFrom(attempt: () => unknown): readonly InputFault[] {
  try {
    attempt();
  } catch (error) {
    if (error instanceof PresolderError) return error.faults;
    throw error;
  }
  throw new Error("expected a refusal, but the input was accepted");
}
