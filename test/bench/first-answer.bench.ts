import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { afterAll, expect, test } from "vitest";
import { report } from "./stopwatch.ts";

const scenario = JSON.parse(readFileSync("scenarios/hss-250k-or-500k.json", "utf8")) as { build: object };
const REQUESTS_PER_SECOND = 50;
const SECONDS = 20;

let service: ChildProcess | undefined;
afterAll(() => {
  if (service?.pid) process.kill(-service.pid, "SIGTERM");
});

/** Starts the service as a person would and gives its address once it prints it. */
async function start(): Promise<string> {
  service = spawn("npm", ["start"], {
    env: { ...process.env, PORT: "0", LOG_LEVEL: "silent", REQUESTS_PER_MINUTE: "1000000" },
    stdio: ["ignore", "pipe", "inherit"],
    // A group of its own, so that the service under npm ends with it.
    detached: true,
  });
  for await (const chunk of service.stdout!) {
    const address = /http:\/\/\S+/.exec(String(chunk))?.[0];
    if (address) return address;
  }
  throw new Error("the service ended before it listened");
}

async function curve(address: string, tone: number): Promise<number> {
  const began = performance.now();
  const answer = await fetch(`${address}api/response`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ build: scenario.build, settings: { lever: 2, tone } }),
  });
  const { curves } = (await answer.json()) as { curves: { magnitude: number[] }[] };
  if (curves[0]!.magnitude.length !== 512) throw new Error("no curve came");
  return performance.now() - began;
}

test("from `npm start` to the first curve, and from a knob to its curve", { timeout: 120_000 }, async () => {
  const began = performance.now();
  const address = await start();
  const first = await curve(address, 5);
  const cold = performance.now() - began;
  const times: Promise<number>[] = [];
  for (let i = 0; i < REQUESTS_PER_SECOND * SECONDS; i++) {
    times.push(curve(address, (i * 0.37) % 10));
    await new Promise((resolve) => setTimeout(resolve, 1000 / REQUESTS_PER_SECOND));
  }
  const sorted = (await Promise.all(times)).sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  report("first answer", {
    "npm start to first curve, build included (ms)": cold,
    "first curve request (ms)": first,
    [`knob to curve at ${REQUESTS_PER_SECOND}/s, median (ms)`]: at(0.5),
    "99 % within (ms)": at(0.99),
  });
  expect(sorted).toHaveLength(REQUESTS_PER_SECOND * SECONDS);
});
