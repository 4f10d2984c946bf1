import { expect, test } from "vitest";
import { serviceWith } from "../loopback.ts";
import { PLAN } from "../plan.ts";

/** Samples of the Prometheus text format, version 0.0.4, by name and labels. */
function samplesOf(text: string): Map<string, number> {
  const lines = text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  return new Map(
    lines.map((line) => {
      const [, name, value] = /^([a-z_]+(?:\{[^}]*\})?) (\S+)$/.exec(line)!;
      return [name!, Number(value)];
    }),
  );
}

test("the figures count requests, their time, jobs, waiting, caching, memory and the event loop's delay", async () => {
  const app = await serviceWith();
  const post = (url: string, payload: object) => app.inject({ method: "POST", url, payload });
  const { code } = (await post("/api/link", { build: PLAN })).json();
  const address = `/api/preview.wav?build=${code}&signal=click`;
  const { etag } = (await app.inject(address)).headers;
  await app.inject({ url: address, headers: { "if-none-match": String(etag) } });
  await post("/api/preview", { build: PLAN, signal: "click" });
  await post("/api/preview", { build: PLAN, signal: "nothing" });
  const answer = await app.inject("/metrics");
  expect(answer.headers["content-type"]).toBe("text/plain; version=0.0.4; charset=utf-8");
  expect(answer.headers["cache-control"]).toBe("no-store");
  const samples = samplesOf(answer.payload);
  expect([...samples.values()].every(Number.isFinite)).toBe(true);
  const requests = (method: string, route: string, status: number) =>
    samples.get(`presolder_requests_total{method="${method}",route="${route}",status="${status}"}`);
  expect(requests("GET", "/api/preview.wav", 200)).toBe(1);
  expect(requests("GET", "/api/preview.wav", 304)).toBe(1);
  expect(requests("POST", "/api/preview", 200)).toBe(1);
  expect(requests("POST", "/api/preview", 400)).toBe(1);
  expect(samples.get('presolder_request_seconds_count{route="/api/preview"}')).toBe(2);
  expect(samples.get('presolder_answers_total{cache="cacheable"}')).toBe(1);
  expect(samples.get('presolder_answers_total{cache="not-modified"}')).toBe(1);
  expect(samples.get('presolder_answers_total{cache="uncached"}')).toBe(3);
  expect(samples.get('presolder_job_seconds_count{job="preview",outcome="done"}')).toBe(2);
  expect(samples.get("presolder_queue_seconds_count")).toBe(2);
  expect(samples.get("presolder_queue_waiting")).toBe(0);
  expect(samples.get("presolder_jobs_running")).toBe(0);
  expect(samples.get("presolder_requests_in_flight")).toBe(1);
  expect(samples.get('presolder_memory_bytes{kind="resident"}')).toBeGreaterThan(2 ** 20);
  expect(samples.get('presolder_event_loop_delay_seconds{quantile="0.99"}')).toBeGreaterThanOrEqual(0);
});

test("nothing that anybody typed becomes a label, and the labels stay few", async () => {
  const app = await serviceWith();
  const word = "zebrafinch";
  const { code } = (
    await app.inject({ method: "POST", url: "/api/link", payload: { build: { ...PLAN, title: word } } })
  ).json();
  for (let n = 0; n < 50; n++) await app.inject(`/${word}/${n}?${word}`);
  for (const url of [`/b/${code}`, `/api/link/${code}`, `/api/scenarios/${word}`, `/b/${word}`, "/", `/${word}.js`]) {
    await app.inject(url);
  }
  await app.inject({ method: "POST", url: "/api/preview", payload: { build: PLAN, signal: word, [word]: 1 } });
  const { payload } = await app.inject("/metrics");
  expect(payload).not.toContain(word);
  expect(payload).not.toContain(code.slice(0, 20));
  expect(payload).toContain('route="none",status="404"');
  expect(payload.split("\n").length).toBeLessThan(400);
});

test("two services in one process keep their figures apart", async () => {
  const [first, second] = [await serviceWith(), await serviceWith()];
  await first.inject("/api/signals");
  expect((await first.inject("/metrics")).payload).toContain('route="/api/signals"');
  expect((await second.inject("/metrics")).payload).not.toContain('route="/api/signals"');
});
