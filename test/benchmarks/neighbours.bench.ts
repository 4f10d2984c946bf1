import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { afterAll, expect, test } from "vitest";
import { startService } from "../load/service.ts";
import { report } from "./stopwatch.ts";

const { build } = JSON.parse(readFileSync("scenarios/tone-cap-22-or-47.json", "utf8")) as { build: object };
const SECONDS = Number(process.env.NEIGHBOUR_SECONDS || 15);
const AT_A_TIME = 8;

/** Callers are processes of their own, each by an address of its own, so that neither waits for the other's event loop. */
const CALLER = `
import { Agent, request } from "node:http";
const agent = new Agent({ keepAlive: true });
export const askAs = (client, url, text) => new Promise((resolve, reject) => {
  const began = performance.now();
  const headers = { "content-type": "application/json", "content-length": Buffer.byteLength(text), "x-forwarded-for": client };
  const asked = request(url, { method: "POST", agent, headers }, (answer) => {
    answer.resume().on("end", () => answer.statusCode === 200
      ? resolve(performance.now() - began)
      : reject(new Error(url + " answered " + answer.statusCode)));
  });
  asked.on("error", reject).end(text);
});
`;
const module = `data:text/javascript,${encodeURIComponent(CALLER)}`;

/** As many large questions as come back, one after the other in each of its places. */
const GREEDY = `
import { askAs } from ${JSON.stringify(module)};
import { json } from "node:stream/consumers";
const [url, places] = process.argv.slice(1);
const large = await json(process.stdin);
let next = 0;
const ask = async () => {
  for (;;) {
    const [path, body] = large[next++ % large.length];
    await askAs("10.0.0.1", url + path, JSON.stringify(body));
  }
};
for (let place = 0; place < Number(places); place++) ask();
console.log("begun");
`;

/** A curve every fiftieth of a second, and how long each took. */
const MODEST = `
import { askAs } from ${JSON.stringify(module)};
const [url, seconds, body] = process.argv.slice(1);
const took = [];
for (const end = Date.now() + 1000 * seconds; Date.now() < end; ) {
  took.push(await askAs("10.0.0.2", url + "/api/response", body));
  await new Promise((resolve) => setTimeout(resolve, 20));
}
console.log(JSON.stringify(took));
process.exit();
`;

const running: ChildProcess[] = [];
afterAll(() => {
  for (const child of running) child.kill();
});

function processOf(script: string, ...args: string[]): ChildProcess {
  const child = spawn(process.execPath, ["--input-type=module", "-e", script, ...args], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  running.push(child);
  return child;
}

async function lineOf(child: ChildProcess): Promise<string> {
  for await (const line of createInterface({ input: child.stdout! })) return line;
  throw new Error("a caller ended before it had anything to say");
}

const LARGE: Readonly<Record<string, readonly (readonly [path: string, body: object])[]>> = {
  sweeps: [["/api/response", { build }]],
  "curves of 8,000 frequencies": [
    [
      "/api/response",
      {
        build,
        frequencies: Array.from({ length: 8_000 }, (_, index) => 20 * 1000 ** (index / 7_999)),
        sweep: { lever: [1, 2, 3, 4, 5], volume: [10, 8, 6, 4, 2] },
      },
    ],
  ],
  sets: [["/api/previews", { build }]],
};
const at = (share: number, sorted: readonly number[]) => sorted[Math.floor(share * (sorted.length - 1))]!;

test("a curve beside one other caller's large questions", { timeout: 600_000 }, async () => {
  const service = await startService({ TRUST_PROXY: "1" });
  running.push(service.child);
  const modest = async () => {
    const body = JSON.stringify({ build, settings: { lever: 1 } });
    const took = JSON.parse(await lineOf(processOf(MODEST, service.url, `${SECONDS}`, body))) as number[];
    return took.toSorted((a, b) => a - b);
  };
  const alone = await modest();
  const beside: [string, number[]][] = [];
  for (const [name, questions] of [...Object.entries(LARGE), ["all of them", Object.values(LARGE).flat()] as const]) {
    const greedy = processOf(GREEDY, service.url, `${AT_A_TIME}`);
    greedy.stdin!.end(JSON.stringify(questions));
    await lineOf(greedy);
    beside.push([name, await modest()]);
    greedy.kill();
    await once(greedy, "exit");
  }
  const told = (took: readonly number[]) =>
    `median ${at(0.5, took).toFixed(1)}, 99 % ${at(0.99, took).toFixed(1)}, most ${at(1, took).toFixed(1)}`;
  report(`a curve, ms, beside ${AT_A_TIME} at a time of somebody else's`, {
    nothing: told(alone),
    ...Object.fromEntries(beside.map(([name, took]) => [name, told(took)])),
    "median beside all of them / alone": at(0.5, beside.at(-1)![1]) / at(0.5, alone),
  });
  expect(beside.map(([, took]) => took.length > SECONDS)).toEqual(beside.map(() => true));
});
