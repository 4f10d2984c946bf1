import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as limits from "../../../src/limits.ts";
import { escapeHtml } from "../../../src/server/http/small-pages.ts";
import { useService } from "../service.ts";

const service = useService();

describe("the reference at /api/", () => {
  it("tells every limit with its value and the reason that stands before it", async () => {
    const { body } = await service.app.inject({ url: "/api/" });
    const rows = [...body.matchAll(/<dt><code>(\w+)<\/code> ([\d.,]+)<\/dt><dd>([^<]+)<\/dd>/g)];
    expect(rows.map(([, name, value]) => [name, Number(value!.replaceAll(",", ""))])).toEqual(
      expect.arrayContaining(Object.entries(limits)),
    );
    expect(rows).toHaveLength(Object.keys(limits).length);
    const source = readFileSync("src/limits.ts", "utf8");
    const reasonOf = (name: string) => source.split(`export const ${name} `)[0]!.split("/**").at(-1);
    for (const [, name, , reason] of rows) expect(escapeHtml(reasonOf(name!)!)).toContain(reason);
  });

  it("may be cached, is told to be unchanged, and keeps the policy of every page", async () => {
    const first = await service.app.inject({ url: "/api/" });
    expect(first.statusCode).toBe(200);
    expect(first.headers["cache-control"]).toMatch(/^public, max-age=\d+$/);
    const again = await service.app.inject({
      url: "/api/",
      headers: { "if-none-match": first.headers.etag as string },
    });
    expect(again.statusCode).toBe(304);
    const page = await service.app.inject({ url: "/" });
    expect(first.headers["content-security-policy"]).toBe(page.headers["content-security-policy"]);
    expect(first.headers["content-security-policy"]).not.toContain("unsafe");
    expect(first.body).not.toMatch(/ style=|<style|<script(?![^>]* src=)/);
  });

  it("is found without the slash too", async () => {
    const reply = await service.app.inject({ url: "/api" });
    expect([reply.statusCode, reply.headers.location]).toEqual([308, "/api/"]);
  });
});
