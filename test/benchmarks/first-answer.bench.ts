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

/** A server that does nothing but send as much text as a curve has. */
const BARE = `
import { createServer } from "node:http";
const text = "0".repeat(Number(process.argv[1]));
const server = createServer((request, response) => {
  request.resume().on("end", () => response.setHeader("content-type", "application/json").end(text));
});
server.listen(0, "127.0.0.1", () => console.log("http://127.0.0.1:" + server.address().port + "/"));
`;

const children: ChildProcess[] = [];
afterAll(() => {
  for (const { pid } of children) if (pid) process.kill(-pid, "SIGTERM");
});

/** Starts a server and gives its address once it prints it. */
async function addressOf(command: string, args: readonly string[]): Promise<string> {
  const child = spawn(command, args, {
    env: { ...process.env, PORT: "0", LOG_LEVEL: "silent", REQUESTS_PER_MINUTE: "1000000" },
    stdio: ["ignore", "pipe", "inherit"],
    // A group of its own, so that a service under npm ends with it.
    detached: true,
  });
  children.push(child);
  for await (const chunk of child.stdout!) {
    const address = /http:\/\/\S+/.exec(String(chunk))?.[0];
    if (address) return address;
  }
  throw new Error(`${command} ended before it listened`);
}

/** The service's time and the wire's: a connection that stays open, and the answer read to its last byte and not taken apart. */
class Caller {
  readonly #agent = new Agent({ keepAlive: true });
  readonly #url: string;

  constructor(address: string) {
    this.#url = `${address}api/response`;
  }

  async ask(tone: number): Promise<{ took: number; text: string }> {
    const body = JSON.stringify({ build: scenario.build, settings: { lever: 2, tone } });
    const headers = { "content-type": "application/json", "content-length": Buffer.byteLength(body) };
    const began = performance.now();
    const asked = request(this.#url, { method: "POST", agent: this.#agent, headers }).end(body);
    const [answer] = (await once(asked, "response")) as [IncomingMessage];
    const bytes = await buffer(answer);
    return { took: performance.now() - began, text: bytes.toString() };
  }

  close(): void {
    this.#agent.destroy();
  }
}

function requireCurve({ took, text }: { took: number; text: string }): number {
  const { curves } = JSON.parse(text) as { curves: { magnitude: number[] }[] };
  if (curves[0]!.magnitude.length !== 512) throw new Error("no curve came");
  return took;
}

const half = () => new Promise((resolve) => setTimeout(resolve, 500 / REQUESTS_PER_SECOND));
const rising = (times: readonly number[]) => times.toSorted((a, b) => a - b);
const at = (share: number, sorted: readonly number[]) => sorted[Math.floor(share * (sorted.length - 1))]!;

test("from `npm start` to the first curve, and from a knob to its curve", { timeout: 120_000 }, async () => {
  const began = performance.now();
  const service = new Caller(await addressOf("npm", ["start"]));
  const firstAnswer = await service.ask(5);
  const cold = performance.now() - began;
  const first = requireCurve(firstAnswer);
  const bare = new Caller(
    await addressOf(process.execPath, ["--input-type=module", "-e", BARE, `${firstAnswer.text.length}`]),
  );
  const asked: Promise<{ took: number; text: string }>[] = [];
  const bareAsked: Promise<{ took: number; text: string }>[] = [];
  for (let i = 0; i < REQUESTS_PER_SECOND * SECONDS; i++) {
    asked.push(service.ask((i * 0.37) % 10));
    await half();
    bareAsked.push(bare.ask(0));
    await half();
  }
  const knob = rising((await Promise.all(asked)).map(requireCurve));
  const floor = rising((await Promise.all(bareAsked)).map(({ took }) => took));
  service.close();
  bare.close();
  report("first answer", {
    "npm start to first curve, build included (ms)": cold,
    "first curve request (ms)": first,
    [`knob to curve at ${REQUESTS_PER_SECOND}/s, median (ms)`]: at(0.5, knob),
    "99 % within (ms)": at(0.99, knob),
    "a bare server's answer of that length, median (ms)": at(0.5, floor),
    "99 % of those within (ms)": at(0.99, floor),
    "ours / bare, median": at(0.5, knob) / at(0.5, floor),
  });
  expect(knob).toHaveLength(REQUESTS_PER_SECOND * SECONDS);
});
