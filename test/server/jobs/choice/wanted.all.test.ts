import { expect, test } from "vitest";
import { wantedRequestSchema } from "../../../../src/contract/wanted.ts";
import { wantedJob } from "../../../../src/server/jobs/choice/wanted.ts";

// What meets it is not the best of those begun with until its values are changed.
test("the wish that stands in README is met, though not every wiring can be tried", () => {
  const text = "glassy 4, fat bridge that cleans up, hum-free 2";
  const body = wantedRequestSchema.parse({ text });
  const { exhaustive, guards } = wantedJob.run(wantedJob.read(body), { checkpoint: () => {} } as never);
  expect(exhaustive).toBe(false);
  expect(guards[0]!.cost).toBe(0);
});
