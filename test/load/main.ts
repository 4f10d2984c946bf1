// A bounded mix of curves, previews, uploads and sets against the built service on the loopback interface, for LOAD_MINUTES
// (10 unless said otherwise). Ends with 1 where any request failed. WORKERS is passed on to the service.
import { PLAN } from "../server/plan.ts";
import { figure, quantile, slope } from "./figures.ts";
import { type Caller, callers } from "./mix.ts";
import { startService } from "./service.ts";

const minutes = Number(process.env.LOAD_MINUTES || 10);
if (!(minutes > 0 && minutes <= 60)) throw new RangeError("LOAD_MINUTES: expected more than 0 and at most 60");
const SAMPLE_MS = 5_000;
/** A later event loop is felt. */
const AIM_MS = 20;
/** Memory still grows while code is compiled and caches fill. */
const WARM_UP_SHARE = 0.3;

interface Sample {
  readonly seconds: number;
  readonly residentMib: number;
  readonly delayMs: number;
  readonly setsDone: number;
}

const { child, url } = await startService();
const began = performance.now();
const end = began + minutes * 60_000;
const times = new Map<string, number[]>();
const failures: string[] = [];
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function ask({ kind, ask: request }: Caller): Promise<void> {
  const asked = performance.now();
  try {
    const answer = await request(url);
    await answer.arrayBuffer();
    if (answer.status !== 200) failures.push(`${kind}: status ${answer.status}`);
  } catch (error) {
    failures.push(`${kind}: ${(error as Error).message}`);
  }
  times.set(kind, [...(times.get(kind) ?? []), performance.now() - asked]);
}

async function keepAsking(caller: Caller): Promise<void> {
  while (performance.now() < end) {
    await ask(caller);
    await pause(caller.restMs * (0.5 + Math.random()));
  }
}

async function sample(): Promise<Sample> {
  const text = await (await fetch(`${url}/metrics`)).text();
  return {
    seconds: (performance.now() - began) / 1_000,
    residentMib: figure(text, 'presolder_memory_bytes{kind="resident"}') / 2 ** 20,
    delayMs: figure(text, 'presolder_event_loop_delay_seconds{quantile="0.99"}') * 1_000,
    setsDone: times.get("set")?.length ?? 0,
  };
}

async function keepSampling(): Promise<Sample[]> {
  const samples: Sample[] = [];
  while (performance.now() < end) {
    await pause(SAMPLE_MS);
    samples.push(await sample());
  }
  return samples;
}

function report(samples: readonly Sample[]): void {
  console.log(`${minutes} minutes, ${failures.length} failures ${[...new Set(failures)].slice(0, 5).join("; ")}`);
  for (const [kind, all] of times) {
    const [p50, p99] = [0.5, 0.99].map((fraction) => quantile(all, fraction).toFixed(0));
    console.log(`${kind.padEnd(8)} ${String(all.length).padStart(6)} requests, p50 ${p50} ms, p99 ${p99} ms`);
  }
  const settled = samples.filter(({ seconds }) => seconds > WARM_UP_SHARE * minutes * 60);
  const memory = settled.map(({ seconds, residentMib }) => [seconds / 60, residentMib] as const);
  const resident = memory.map(([, mib]) => mib);
  console.log(
    `resident memory ${quantile(resident, 0.5).toFixed(0)} MiB (${Math.min(...resident).toFixed(0)} to ${Math.max(...resident).toFixed(0)}), ` +
      `slope ${slope(memory).toFixed(2)} MiB a minute after warm-up`,
  );
  const delays = samples.map(({ delayMs }) => delayMs);
  console.log(
    `event loop delay p99, read every ${SAMPLE_MS / 1_000} s: median ${quantile(delays, 0.5).toFixed(1)} ms, ` +
      `most ${Math.max(...delays).toFixed(1)} ms, ` +
      `under ${AIM_MS} ms in ${delays.filter((delay) => delay < AIM_MS).length} of ${delays.length} readings`,
  );
}

const body = JSON.stringify({ build: PLAN });
const link = await fetch(`${url}/api/link`, { method: "POST", headers: { "content-type": "application/json" }, body });
const { code } = (await link.json()) as { code: string };
const [samples] = await Promise.all([keepSampling(), ...callers(code).map(keepAsking)]);
report(samples);
child.kill("SIGTERM");
await new Promise((resolve) => child.once("exit", resolve));
process.exit(failures.length === 0 ? 0 : 1);
