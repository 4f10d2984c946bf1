import { expect, test } from "vitest";
import { threeSingles } from "../../../fixtures/circuits.ts";
import { call, listening, serviceWith } from "../../loopback.ts";

test("a long answer, which goes out in slices, is whole and says how long it is", async () => {
  const service = await serviceWith();
  const port = await listening(service);
  const body = {
    build: threeSingles(),
    sweep: { lever: [1, 2, 3, 4, 5], tone: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], volume: [1, 2, 3, 4, 5, 6, 7, 8, 9] },
  };
  const answer = await call({ port, path: "/api/response", body });
  expect(answer.status).toBe(200);
  expect(answer.body.length).toBeGreaterThan(1 << 20);
  expect(Number(answer.headers["content-length"])).toBe(answer.body.length);
  expect(JSON.parse(answer.body.toString()).curves).toHaveLength(5 * 11 * 9);
});
