import { monitorEventLoopDelay } from "node:perf_hooks";
import { expect, test } from "vitest";
import { MAX_BODY_BYTES } from "../../src/limits.ts";
import { buildApp } from "../../src/server/app.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { Random } from "../random.ts";
import { BODIES } from "../server/fuzz/requests.ts";
import { swollenBodies } from "../server/fuzz/swell.ts";
import { PLAN } from "../server/plan.ts";
import { report } from "./stopwatch.ts";

/** A text of as many lists as a body has bytes for is what the platform's own parser takes longest for. */
const HARDEST = `[${Array(Math.floor(MAX_BODY_BYTES / 3))
  .fill("{}")
  .join()}]`;
const SIZES = [MAX_BODY_BYTES - 50_000, 150_000];
const WORST = 10;
const TRIES = 3;

function parsing(text: string): number {
  const began = performance.now();
  JSON.parse(text);
  return performance.now() - began;
}

test("no body, however swollen, holds the event loop longer than the platform takes to parse the hardest of its size", {
  timeout: 3_600_000,
}, async () => {
  const app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
  const delay = monitorEventLoopDelay({ resolution: 1 });
  const held = async (url: string, payload: string) => {
    delay.enable();
    await app.inject({ method: "POST", url, headers: { "content-type": "application/json" }, payload });
    await new Promise(setImmediate);
    delay.disable();
    const longest = delay.max / 1e6;
    delay.reset();
    return longest;
  };
  const found: { title: string; ms: number }[] = [];
  for (const build of [PLAN, threeSingles()])
    for (const [url, , body] of BODIES)
      for (const chars of SIZES)
        for (const { title, text } of swollenBodies(body(build, new Random(1)), chars)) {
          const payload = text();
          let ms = Number.POSITIVE_INFINITY;
          for (let each = 0; each < TRIES && ms > 10; each++) ms = Math.min(ms, await held(url, payload));
          found.push({ title: `${url}, ${title}, ${payload.length} characters`, ms });
        }
  await app.close();
  const peer = Math.min(...Array.from({ length: TRIES }, () => parsing(HARDEST)));
  const worst = found.toSorted((a, b) => b.ms - a.ms).slice(0, WORST);
  report(`${found.length} swollen bodies; the hardest parsing takes ${peer.toFixed(1)} ms`, {
    ...Object.fromEntries(
      worst.map(({ title, ms }) => [title, `${ms.toFixed(1)} ms, ${(ms / peer).toFixed(2)} of it`]),
    ),
  });
  expect(worst[0]!.ms).toBeLessThan(peer);
});
