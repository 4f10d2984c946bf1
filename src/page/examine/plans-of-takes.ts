import { ServiceProblem } from "../server/client.ts";

const OTHER_PLAN =
  "was made by an earlier plan of this guard, which has other steps; record it again, bring another, or leave it out";

/** By which steps each take was made: held to others, every row would pass for another. */
export function createPlansOfTakes(path: string) {
  const made = new WeakMap<File, string>();
  const keyOf = (steps: readonly object[]) => JSON.stringify(steps);
  return {
    /** What is known of a take already stays. */
    keep(file: File, steps: readonly object[]): void {
      if (!made.has(file)) made.set(file, keyOf(steps));
    },
    /** @throws ServiceProblem at the take, where it was made by other steps */
    require(file: File, steps: readonly object[]): void {
      const key = made.get(file);
      if (key === undefined || key === keyOf(steps)) return;
      throw new ServiceProblem("The taps are of an earlier plan", [{ path, message: OTHER_PLAN }]);
    },
  };
}
