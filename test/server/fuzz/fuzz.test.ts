import { expect, test } from "vitest";
import { effort } from "../../effort.ts";
import { fuzz } from "./run.ts";

test("no spoilt build, query, link, form or sound file brings a crash, a 5xx or an answer with a number missing", async () => {
  const inputs = effort(150, 600);
  const { faults, statuses, workersLost } = await fuzz({ seed: 1, inputs, workers: 2 });
  expect(faults).toEqual([]);
  expect(workersLost).toBe(0);
  // Were all of them refused, nothing behind the door would have been tried.
  const accepted = [...statuses].filter(([name]) => name.endsWith(" 200")).reduce((sum, [, count]) => sum + count, 0);
  expect(accepted).toBeGreaterThan((2 * inputs) / 15);
});
