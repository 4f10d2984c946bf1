import { afterAll, beforeAll, expect, test } from "vitest";
import { buildApp } from "../../../src/server/app.ts";

let app: Awaited<ReturnType<typeof buildApp>>;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

test("the catalogue's pickup types and plans are those that a plan may name, and every plan expands", async () => {
  const answer = await app.inject("/api/catalogue");
  expect(answer.statusCode).toBe(200);
  expect(answer.headers["cache-control"]).toContain("max-age");
  const { pickups, plans, layouts, switches, sources } = answer.json();
  expect(pickups.length).toBeGreaterThan(8);
  const ofHenries = sources.find(({ of }: { of: string[] }) =>
    of.includes("pickups.single-medium.coils.coil.inductance"),
  );
  expect(ofHenries).toMatchObject({ basis: "published", words: expect.stringContaining("2.8 H") });
  expect(switches.find((each: { type: string }) => each.type === "lever-5").positions).toHaveLength(5);
  for (const { plan } of plans) {
    expect(layouts.map((layout: { name: string }) => layout.name)).toContain(plan.layout);
    const expanded = await app.inject({
      method: "POST",
      url: "/api/expand",
      payload: { build: { presolder: 1, plan } },
    });
    expect(expanded.statusCode).toBe(200);
  }
});

test.each(["/api/scenarios", "/api/signals", "/api/catalogue", "/api/openapi.json"])(
  "%s is answered 304 where the caller has it already",
  async (url) => {
    const first = await app.inject(url);
    const tag = first.headers.etag as string;
    expect(tag).toMatch(/^"[\w-]{22}"$/);
    const again = await app.inject({ url, headers: { "if-none-match": tag } });
    expect(again.statusCode).toBe(304);
    expect(again.body).toBe("");
    const other = await app.inject({ url, headers: { "if-none-match": '"another"' } });
    expect(other.body).toBe(first.body);
  },
);
