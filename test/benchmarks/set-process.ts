import { createInterface } from "node:readline";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import type { Levelled } from "../../src/render/levels.ts";
import { batchFrom } from "../../src/render/preview-set.ts";
import { rendererOf } from "../../src/render/renderer.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { type SetJob, type SetWork, workOf } from "./set-job.ts";

/** The whole set as the service renders it: filters, sound, levels and files, batch after batch. Answers the files' bytes. */
function renderSet({ build, settings, feed }: SetWork): number {
  let bytes = 0;
  let levels: readonly Levelled[] | undefined;
  for (let from = 0; from < settings.length; ) {
    const renderer = rendererOf({ engine: new ResponseEngine(build), feed }, settings.slice(from), NO_CHECKPOINT);
    const plan = { settings, level: "true", encoding: "pcm16", from, ...(levels ? { levels } : {}) } as const;
    const batch = batchFrom(renderer, plan, NO_CHECKPOINT);
    levels = batch.levels;
    from += batch.wavs.length;
    bytes += batch.wavs.reduce((sum, wav) => sum + wav.length, 0);
  }
  return bytes;
}

function coreMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** The first line is the job and answered once it is ready; every other line is a run. */
let work: SetWork | undefined;
for await (const line of createInterface({ input: process.stdin })) {
  if (!work) {
    work = workOf(JSON.parse(line) as SetJob);
    console.log(JSON.stringify({ settings: work.settings.length, idleBytes: process.memoryUsage().rss }));
    continue;
  }
  const startCore = coreMs();
  const start = performance.now();
  const bytes = renderSet(work);
  const timing = { wallMs: performance.now() - start, coreMs: coreMs() - startCore };
  console.log(JSON.stringify({ ...timing, bytes, peakBytes: process.resourceUsage().maxRSS * 1024 }));
}
