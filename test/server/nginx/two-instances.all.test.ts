import { createHash } from "node:crypto";
import { afterEach, expect, test } from "vitest";
import { describeWith } from "../../tools.ts";
import { PLAN } from "../plan.ts";
import { type Service, startService } from "../process.ts";
import { type Balancer, startProxy } from "./proxy.ts";

let proxy: Balancer | undefined;
afterEach(async () => {
  await proxy?.stop();
  proxy = undefined;
});

async function cluster(): Promise<{ url: string; instances: readonly Service[]; code: string }> {
  const environment = { TRUST_PROXY: "1", REQUESTS_PER_MINUTE: "0", WORKERS: "1" };
  const instances = await Promise.all([startService({ environment }), startService({ environment })]);
  proxy = await startProxy(instances[0]!.port, instances[1]!.port);
  const { url } = proxy;
  const body = JSON.stringify({ build: PLAN });
  const link = await fetch(`${url}/api/link`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body,
  });
  return { url, instances, code: ((await link.json()) as { code: string }).code };
}

const digest = (bytes: ArrayBuffer) => createHash("sha256").update(Buffer.from(bytes)).digest("hex");

async function got(url: string, init: RequestInit = {}) {
  const answer = await fetch(url, init);
  const bytes = await answer.arrayBuffer();
  return { status: answer.status, cache: answer.headers.get("x-cache-status"), headers: answer.headers, bytes };
}

/** Requests that each instance has answered on one route. */
async function answered(instances: readonly Service[], route: string): Promise<number[]> {
  const pattern = new RegExp(`^presolder_requests_total\\{method="GET",route="${route}",status="\\d+"\\} (\\d+)`, "gm");
  const texts = await Promise.all(instances.map(async ({ url }) => (await fetch(`${url}/metrics`)).text()));
  return texts.map((text) => [...text.matchAll(pattern)].reduce((sum, [, count]) => sum + Number(count), 0));
}

describeWith("nginx", "two instances behind nginx", () => {
  test("render a preview once: the second request for it is served from the cache, byte for byte", async () => {
    const { url, instances, code } = await cluster();
    const address = `${url}/api/preview.wav?build=${code}&lever=2&tone=7`;
    const first = await got(address);
    const second = await got(address);
    expect([first.status, first.cache, second.status, second.cache]).toEqual([200, "MISS", 200, "HIT"]);
    expect(digest(second.bytes)).toBe(digest(first.bytes));
    expect(second.headers.get("etag")).toBe(first.headers.get("etag"));
    expect(second.headers.get("presolder-gain-db")).toBe(first.headers.get("presolder-gain-db"));
    expect((await answered(instances, "/api/preview.wav")).sort()).toEqual([0, 1]);
    const part = await got(address, { headers: { range: "bytes=44-143" } });
    expect([part.status, part.bytes.byteLength]).toEqual([206, 100]);
    expect(Buffer.from(part.bytes)).toEqual(Buffer.from(first.bytes).subarray(44, 144));
    // Both instances give the same bytes, so that it does not matter which of them filled the cache.
    const own = await Promise.all(instances.map((each) => got(address.replace(url, each.url))));
    for (const { bytes } of own) expect(digest(bytes)).toBe(digest(first.bytes));
  });

  test("do not let refusals, uploads or the monitor's figures into the cache or out", async () => {
    const { url, code } = await cluster();
    for (const path of ["/api/preview.wav?build=broken", `/api/preview.wav?build=${code}&lever=9`]) {
      for (let n = 0; n < 2; n++) expect((await got(url + path)).cache).toBe("MISS");
    }
    expect((await got(`${url}/metrics`)).status).toBe(404);
  });

  test("lose no request when one of them is killed under load", async () => {
    const { url, instances, code } = await cluster();
    let number = 0;
    const failures: string[] = [];
    const ask = async () => {
      const n = number++;
      const settings = { lever: 1 + (n % 5), tone: (n % 101) / 10, volume: (n % 89) / 10 };
      const query = `lever=${settings.lever}&tone=${settings.tone}&volume=${settings.volume}`;
      const isPost = n % 3 === 0;
      const body = JSON.stringify({ build: PLAN, settings, frequencies: [100, 1000] });
      const headers = { "content-type": "application/json" };
      const answer = isPost
        ? got(`${url}/api/response`, { method: "POST", headers, body })
        : got(`${url}/api/preview.wav?build=${code}&signal=click&rate=8000&${query}`);
      await answer.then(
        ({ status }) => void (status === 200 || failures.push(`${n}: status ${status}`)),
        (error: Error) => failures.push(`${n}: ${error.message}`),
      );
    };
    const until = async (count: number) => {
      while (number < count) await ask();
    };
    const load = Promise.all(Array.from({ length: 6 }, () => until(400)));
    while (number < 150) await new Promise((resolve) => setTimeout(resolve, 5));
    const shared = await answered(instances, "/api/preview.wav");
    instances[0]!.child.kill("SIGKILL");
    await load;
    expect(failures).toEqual([]);
    expect(Math.min(...shared)).toBeGreaterThan(0);
  });
});
