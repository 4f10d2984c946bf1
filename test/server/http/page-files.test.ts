import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { useService } from "../service.ts";

const service = useService();

test("what is named by its content is kept for good, and what names it is asked for every time", async () => {
  const page = await service.app.inject({ url: "/" });
  expect(page.headers["cache-control"]).toBe("no-cache");
  expect(page.headers.etag).toBeDefined();
  const [, code] = /<script type="module" src="([^"]+)"/.exec(page.body)!;
  const script = await service.app.inject({ url: code!, headers: { "accept-encoding": "br" } });
  expect(script.statusCode).toBe(200);
  expect(script.headers["content-encoding"]).toBe("br");
  expect(script.headers["cache-control"]).toBe("public, max-age=31536000, immutable");
  for (const url of ["/sw.js", "/page.webmanifest", "/icon.svg"])
    expect((await service.app.inject({ url })).headers["cache-control"], url).toBe("no-cache");
});

test("the service worker keeps every file that the page may load, and nothing of the service's", async () => {
  const worker = readFileSync("public/sw.js", "utf8");
  const page = readFileSync("public/index.html", "utf8");
  const named = [...page.matchAll(/(?:src|href)="(\/built\/[^"]+)"/g)].map(([, path]) => path!);
  expect(named.length).toBeGreaterThan(1);
  for (const path of named) expect(worker).toContain(path);
  const kept = [...worker.matchAll(/url:"([^"]+)"/g)].map(([, path]) => path!);
  expect(kept.length).toBeGreaterThan(20);
  expect(kept.filter((path) => path.startsWith("/api"))).toEqual([]);
  for (const path of kept) expect((await service.app.inject({ url: path })).statusCode, path).toBe(200);
});
