import { afterAll, beforeAll, expect, test } from "vitest";
import { MAX_BODY_BYTES } from "../../../src/limits.ts";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { casesOf } from "../../effort.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { Random } from "../../random.ts";
import { PLAN } from "../plan.ts";
import { BODIES } from "./requests.ts";
import { swollenBodies } from "./swell.ts";

/** What says where a hundred faults are. */
const MOST_TOLD = 130_000;
const CASES = [PLAN, threeSingles()].flatMap((build) =>
  BODIES.flatMap(([url, , body]) =>
    [MAX_BODY_BYTES - 50_000, 50_000].flatMap((chars) =>
      swollenBodies(body(build, new Random(1)), chars).map((swollen) => ({ url, ...swollen })),
    ),
  ),
);

let app: App;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

test("a body with far too much in one place is refused in few words, whatever and wherever it is", async () => {
  const wrong: string[] = [];
  let refused = 0;
  for (const { url, title, text } of casesOf(CASES, 50, 1_500)) {
    const headers = { "content-type": "application/json" };
    const { statusCode, payload } = await app.inject({ method: "POST", url, headers, payload: text() });
    if (statusCode >= 500 || (statusCode >= 400 && payload.length > MOST_TOLD))
      wrong.push(`${url}, ${title}: ${statusCode} with ${payload.length} characters`);
    if (statusCode >= 400) refused++;
  }
  expect(wrong).toEqual([]);
  expect(refused).toBeGreaterThan(40);
});
