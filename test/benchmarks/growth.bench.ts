import { expect, test } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { hssWithBleed, threeSingles } from "../fixtures/circuits.ts";
import { startService } from "../server/process.ts";
import { withBundle } from "./bundle.ts";
import { LineProcess, type Timing } from "./line-process.ts";
import { type SetJob, workOf } from "./set-job.ts";
import { report } from "./stopwatch.ts";

const MIB = 2 ** 20;
const LEVER = [1, 2, 3, 4, 5];
const DIALS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];

interface Ready {
  readonly settings: number;
  readonly idleBytes: number;
}

interface Run extends Timing {
  readonly bytes: number;
  readonly peakBytes: number;
}

/** The better of two runs, after one to warm up, in a process whose highest memory is the job's own. */
async function grown(script: string, job: SetJob): Promise<Run & Ready> {
  const service = new LineProcess(process.execPath, [script]);
  try {
    const ready = await service.ask<Ready>(job);
    const runs: Run[] = [];
    for (let i = 0; i < 3; i++) runs.push(await service.ask<Run>("run"));
    const best = runs.slice(1).reduce((a, b) => (a.coreMs < b.coreMs ? a : b));
    return { ...ready, ...best, peakBytes: runs.at(-1)!.peakBytes };
  } finally {
    service.stop();
  }
}

const three = { build: threeSingles(), seconds: 10, sampleRateHz: 48_000 };
const GROWTHS: Readonly<Record<string, readonly SetJob[]>> = {
  "with settings, 10 s each": [
    { ...three, sweep: { lever: LEVER, tone: [10] } },
    { ...three },
    { ...three, sweep: { lever: LEVER, tone: DIALS, volume: [3, 7, 10] } },
    { ...three, sweep: { lever: LEVER, tone: DIALS, volume: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] } },
  ],
  "with seconds, 55 settings each": [1, 5, 10, 30, 60].map((seconds) => ({ ...three, seconds })),
  "with rate and channels of a file, 55 settings of 60 s each": [
    { ...three, seconds: 60, fileChannels: 1 },
    { ...three, seconds: 60, fileChannels: 2 },
    { ...three, seconds: 60, fileChannels: 2, sampleRateHz: 96_000 },
  ],
};

test.each(Object.entries(GROWTHS))("rendering as work grows %s", async (title, jobs) => {
  await withBundle("set-process.ts", async (script) => {
    const rows: Record<string, string> = {};
    for (const job of jobs) {
      const { settings, coreMs, wallMs, bytes, idleBytes, peakBytes } = await grown(script, job);
      const channels = job.fileChannels ?? 1;
      const perSecond = coreMs / (settings * job.seconds * channels);
      rows[`${settings} × ${job.seconds} s, ${job.sampleRateHz} Hz, ${channels} channels`] = [
        `${coreMs.toFixed(0)} ms of a core (${wallMs.toFixed(0)} by the clock)`,
        `${(1000 * perSecond).toFixed(0)} µs a second of sound`,
        `${(bytes / MIB).toFixed(0)} MiB of files`,
        `memory ${(peakBytes / MIB).toFixed(0)} MiB at most, ${(idleBytes / MIB).toFixed(0)} with the sounds alone`,
      ].join("; ");
    }
    report(`growth ${title}`, rows);
  });
});

/** Resident memory of a process, from the kernel's own books. */
async function residentBytes(pid: number): Promise<number> {
  const { readFile } = await import("node:fs/promises");
  const status = await readFile(`/proc/${pid}/status`, "utf8");
  return 1024 * Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]);
}

/** A minute of stereo at 96 kHz through every setting, read from the service as it comes, or slowly. */
test.each([
  ["read as fast as it comes", 0],
  ["read slowly", 1],
])("memory of the service while it streams a minute of stereo at 96 kHz in 55 settings, %s", async (title, waitMs) => {
  const work = workOf({ build: hssWithBleed(), seconds: 60, sampleRateHz: 96_000, fileChannels: 2 });
  const file = encodeWav({ sampleRateHz: 96_000, channels: work.feed.drive }, "float32");
  const service = await startService({ environment: { LOG_LEVEL: "error", REQUESTS_PER_MINUTE: "0" } });
  const pid = service.child.pid!;
  const form = new FormData();
  form.set("request", JSON.stringify({ build: hssWithBleed(), level: "true", encoding: "pcm16" }));
  form.set("signal", new Blob([file as BlobPart], { type: "audio/wav" }), "minute.wav");
  const idle = await residentBytes(pid);
  const start = performance.now();
  let highest = idle;
  const watch = setInterval(async () => {
    highest = Math.max(highest, await residentBytes(pid).catch(() => 0));
  }, 20);
  let bytes = 0;
  let firstMs = 0;
  try {
    const response = await fetch(`${service.url}/api/previews`, { method: "POST", body: form });
    if (response.status !== 200) throw new Error(await response.text());
    for await (const part of response.body!) {
      firstMs ||= performance.now() - start;
      bytes += part.length;
      if (waitMs > 0) await new Promise((resolve) => setTimeout(resolve, waitMs));
    }
  } finally {
    clearInterval(watch);
    service.child.kill();
  }
  report(`a streamed set, ${title}`, {
    "archive (MiB)": bytes / MIB,
    "first bytes (s)": firstMs / 1000,
    "last bytes (s)": (performance.now() - start) / 1000,
    "memory before (MiB)": idle / MIB,
    "memory at most (MiB)": highest / MIB,
  });
  expect(bytes).toBeGreaterThan(55 * 60 * 96_000 * 4);
});
