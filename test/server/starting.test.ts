import { type ChildProcess, spawn } from "node:child_process";
import type { AddressInfo } from "node:net";
import { createServer } from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { readConfig } from "../../src/config.ts";

const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children.splice(0)) child.kill("SIGKILL");
});

/** The service as `npm start` runs it, once built. */
function start(environment: Record<string, string>) {
  const child = spawn(process.execPath, ["dist/main.js"], {
    env: { ...process.env, LOG_LEVEL: "warn", ...environment },
  });
  children.push(child);
  const output = { out: "", err: "" };
  child.stdout.on("data", (chunk) => {
    output.out += chunk;
  });
  child.stderr.on("data", (chunk) => {
    output.err += chunk;
  });
  const ended = new Promise<number | null>((resolve) => void child.once("exit", resolve));
  const address = new Promise<string>((resolve) => {
    child.stdout.on("data", () => {
      const found = /listens on (http:\S+)/.exec(output.out)?.[1];
      if (found) resolve(found);
    });
  });
  return { child, output, ended, address };
}

describe("the service", () => {
  it("logs requests from the first that somebody else makes", async () => {
    const { output, address } = start({ PORT: "0", LOG_LEVEL: "info" });
    const url = await address;
    expect(output.out).not.toContain("/api/response");
    await fetch(`${url}healthz`);
    await fetch(`${url}api/scenarios`);
    await expect.poll(() => output.out).toContain("/api/scenarios");
    expect(output.out).not.toContain("/api/response");
  });

  it("counts nobody's requests but other people's, in its limit and in its figures", async () => {
    const { address } = start({ PORT: "0", REQUESTS_PER_MINUTE: "2" });
    const url = await address;
    for (const status of [200, 200, 429]) expect((await fetch(`${url}api/signals`)).status).toBe(status);
    const figures = await (await fetch(`${url}metrics`)).text();
    expect(figures).toContain('route="/api/signals",status="200"} 2');
    expect(figures).not.toMatch(/api\/response|curvesJson/);
    expect(figures).toMatch(/^presolder_queue_seconds_count 0$/m);
  });

  it("prints its address, answers there, and ends in order when told to", async () => {
    const { child, output, ended, address } = start({ PORT: "0" });
    const url = await address;
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect((await fetch(`${url}healthz`)).status).toBe(200);
    expect(await (await fetch(url)).text()).toContain("<title>Presolder</title>");
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
    expect(output.err).toBe("");
  });

  it("says so where its port is in use", async () => {
    const other = createServer();
    await new Promise<void>((resolve) => void other.listen(0, "127.0.0.1", resolve));
    const { port } = other.address() as AddressInfo;
    const { output, ended } = start({ PORT: String(port) });
    expect(await ended).toBe(1);
    expect(output.err).toContain(`port ${port} on 127.0.0.1 is in use; set PORT to another`);
    other.close();
  });

  it("says which variable is at fault", async () => {
    const { output, ended } = start({ PORT: "eighty", LOG_LEVEL: "loud" });
    expect(await ended).toBe(1);
    expect(output.err).toContain("PORT: expected a whole number from 0 to 65535");
    expect(output.err).toContain("LOG_LEVEL: expected one of fatal");
  });
});

describe("the configuration", () => {
  it("has the documented defaults, an empty variable counting as absent", () => {
    expect(readConfig({ HOST: "" })).toMatchObject({
      host: "127.0.0.1",
      port: 4680,
      logLevel: "info",
      trustProxy: false,
    });
  });

  it("takes what the environment says", () => {
    expect(
      readConfig({
        HOST: "::",
        PORT: "80",
        LOG_LEVEL: "silent",
        WORKERS: "3",
        TRUST_PROXY: "10.0.0.1, 192.168.0.0/16",
      }),
    ).toMatchObject({
      host: "::",
      port: 80,
      logLevel: "silent",
      workers: 3,
      trustProxy: ["10.0.0.1", "192.168.0.0/16"],
    });
  });

  it.each([
    { PORT: "70000" },
    { PORT: "-1" },
    { WORKERS: "0" },
    { TRUST_PROXY: "yes" },
    { TRUST_PROXY: "true" },
    { TRUST_PROXY: "11" },
    { TRUST_PROXY: "10.0.0.0/33" },
    { PUBLIC_URL: "guards.example" },
    { PUBLIC_URL: "https://guards.example/x" },
  ])("refuses %o", (environment) => {
    expect(() => readConfig(environment)).toThrow(RangeError);
  });
});
