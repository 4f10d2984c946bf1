import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { filtersIn } from "../../src/render/filters.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { hssWithBleed, threeSingles } from "../fixtures/circuits.ts";
import { withBundle } from "./bundle.ts";
import { LineProcess, type Timing } from "./line-process.ts";
import { scipyOverlapSave, soxFir } from "./rendering-peers.ts";
import { type SetWork, workOf } from "./set-job.ts";
import { median, report } from "./stopwatch.ts";

const SAMPLE_RATE_HZ = 48_000;
const SECONDS = 10;
const ROUNDS = 9;
const WARM_UPS = 20;

function filtersOf({ build, settings }: SetWork) {
  const engine = new ResponseEngine(build);
  const plan = { engine, sampleRateHz: SAMPLE_RATE_HZ, hasDrive: false, hasCoils: true };
  return settings.map((each) => filtersIn(plan, each).taps);
}

function medians(timings: readonly Timing[]): Timing {
  return { wallMs: median(timings.map((t) => t.wallMs)), coreMs: median(timings.map((t) => t.coreMs)) };
}

const pair = (clock: number, core: number, digits: number) =>
  [clock, core].map((value) => value.toFixed(digits).padStart(6)).join(" ");
const shown = ({ wallMs, coreMs }: Timing) => pair(wallMs, coreMs, 0);
const ratios = (peer: Timing, ours: Timing) => pair(peer.wallMs / ours.wallMs, peer.coreMs / ours.coreMs, 2);

test.each([
  ["three single coils", threeSingles()],
  ["HSS, coupled humbucker, treble bleed", hssWithBleed()],
])("55 previews × 10 s to 16-bit WAV, %s, against sox and SciPy", async (title, build) => {
  const job = { build, seconds: SECONDS, sampleRateHz: SAMPLE_RATE_HZ };
  const work = workOf(job);
  const rendering = { sampleRateHz: SAMPLE_RATE_HZ, inputs: work.feed.coils, sets: filtersOf(work) };
  const directory = mkdtempSync(join(tmpdir(), "presolder-bench-"));
  await withBundle("set-process.ts", async (script) => {
    // The contenders have one thread each, and so has the collector of garbage.
    const service = new LineProcess(process.execPath, ["--single-threaded-gc", script]);
    const { scipy, size } = await scipyOverlapSave(rendering, join(directory, "scipy"));
    try {
      expect(await service.ask(job)).toMatchObject({ settings: 55 });
      const sox = soxFir(rendering, join(directory, "sox"));
      const runs = { ours: [] as Timing[], scipy: [] as Timing[], sox: [] as Timing[], plain: [] as Timing[] };
      for (let i = 0; i < WARM_UPS; i++) await service.ask("run");
      for (let round = 0; round < ROUNDS; round++) {
        runs.ours.push(await service.ask("run"));
        runs.scipy.push(await scipy.ask("run"));
        if (round % 3 > 0) continue;
        runs.sox.push(sox(true));
        runs.plain.push(sox(false));
      }
      const ours = medians(runs.ours);
      const peers = { sox: medians(runs.sox), plain: medians(runs.plain), scipy: medians(runs.scipy) };
      const audioMs = work.settings.length * SECONDS * 1000;
      report(`rendering: ${title} (by the clock, by the core)`, {
        "the set, levelled, dithered (ms)": shown(ours),
        "sox fir, one coil, dithered (ms)": shown(peers.sox),
        "sox fir, one coil, not dithered (ms)": shown(peers.plain),
        [`SciPy overlap-save, float64, blocks of ${size}, not dithered (ms)`]: shown(peers.scipy),
        "× real time": pair(audioMs / ours.wallMs, audioMs / ours.coreMs, 0),
        "sox / ours": ratios(peers.sox, ours),
        "sox, not dithering / ours": ratios(peers.plain, ours),
        "SciPy / ours": ratios(peers.scipy, ours),
      });
    } finally {
      service.stop();
      scipy.stop();
      rmSync(directory, { recursive: true, force: true });
    }
  });
});
