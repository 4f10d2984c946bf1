import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { Agent, type IncomingMessage, request } from "node:http";
import { buffer } from "node:stream/consumers";
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

/** The service's time and the wire's: a connection that stays open, and the answer read to its last byte and not taken apart. */
class Caller {
  readonly #agent = new Agent({ keepAlive: true });
  readonly #url: string;

  constructor(address: string) {
    this.#url = `${address}api/response`;
  }

  async curve(tone: number): Promise<number> {
    const body = JSON.stringify({ build: scenario.build, settings: { lever: 2, tone } });
    const headers = { "content-type": "application/json", "content-length": Buffer.byteLength(body) };
    const began = performance.now();
    const asked = request(this.#url, { method: "POST", agent: this.#agent, headers }).end(body);
    const [answer] = (await once(asked, "response")) as [IncomingMessage];
    const text = await buffer(answer);
    const took = performance.now() - began;
    const { curves } = JSON.parse(text.toString()) as { curves: { magnitude: number[] }[] };
    if (curves[0]!.magnitude.length !== 512) throw new Error("no curve came");
    return took;
  }

  close(): void {
    this.#agent.destroy();
  }
}

test("from `npm start` to the first curve, and from a knob to its curve", { timeout: 120_000 }, async () => {
  const began = performance.now();
  const address = await start();
  const caller = new Caller(address);
  const first = await caller.curve(5);
  const cold = performance.now() - began;
  const times: Promise<number>[] = [];
  for (let i = 0; i < REQUESTS_PER_SECOND * SECONDS; i++) {
    times.push(caller.curve((i * 0.37) % 10));
    await new Promise((resolve) => setTimeout(resolve, 1000 / REQUESTS_PER_SECOND));
  }
  const sorted = (await Promise.all(times)).sort((a, b) => a - b);
  caller.close();
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  report("first answer", {
    "npm start to first curve, build included (ms)": cold,
    "first curve request (ms)": first,
    [`knob to curve at ${REQUESTS_PER_SECOND}/s, median (ms)`]: at(0.5),
    "99 % within (ms)": at(0.99),
  });
  expect(sorted).toHaveLength(REQUESTS_PER_SECOND * SECONDS);
});
