import { expect, test } from "vitest";
import { figure } from "../load/figures.ts";
import { startService } from "../load/service.ts";
import { PLAN } from "../server/plan.ts";

const headers = { "content-type": "application/json" };

/** Processor time and not the clock's, so that whatever else runs on the machine counts less. */
test("what a second of one core yields", async () => {
  const { child, url } = await startService({ WORKERS: "1" });
  const cpu = async () => figure(await (await fetch(`${url}/metrics`)).text(), "presolder_cpu_seconds");
  const body = JSON.stringify({ build: PLAN });
  const { code } = (await (await fetch(`${url}/api/link`, { method: "POST", headers, body })).json()) as {
    code: string;
  };
  const perSecond = async (what: string, count: number, ask: (n: number) => Promise<Response>) => {
    for (let n = 0; n < Math.min(20, count); n++) await (await ask(n)).arrayBuffer();
    const before = await cpu();
    for (let n = 0; n < count; n++) {
      const answer = await ask(count + n);
      expect(answer.status).toBe(200);
      await answer.arrayBuffer();
    }
    const seconds = ((await cpu()) - before) / count;
    console.log(
      `${what}: ${(1_000 * seconds).toFixed(1)} ms of processor time, ${(1 / seconds).toFixed(1)} a second a core`,
    );
  };
  const setting = (n: number) => `lever=${1 + (n % 5)}&tone=${(n % 101) / 10}&volume=${(n % 89) / 10}`;
  const preview = (n: number) => fetch(`${url}/api/preview.wav?build=${code}&${setting(n)}`);
  const curve = (n: number) => {
    const settings = { lever: 1 + (n % 5), tone: (n % 101) / 10, volume: (n % 89) / 10 };
    return fetch(`${url}/api/response`, { method: "POST", headers, body: JSON.stringify({ build: PLAN, settings }) });
  };
  const set = () => fetch(`${url}/api/previews`, { method: "POST", headers, body: JSON.stringify({ build: PLAN }) });
  await perSecond("one curve, 512 points", 300, curve);
  await perSecond("one preview, the strum at 48 kHz", 300, preview);
  await perSecond("a set of 55 previews with its curves, zipped", 8, set);
  child.kill("SIGTERM");
});
