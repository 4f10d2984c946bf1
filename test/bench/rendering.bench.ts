import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readBuild } from "../../src/build/read-build.ts";
import type { Build } from "../../src/build/schema.ts";
import { Controls, expandSweep, type Settings } from "../../src/build/settings.ts";
import { NO_CHECKPOINT } from "../../src/render/checkpoint.ts";
import { coilPlaces, stringSetOf } from "../../src/render/coil-places.ts";
import type { Feed } from "../../src/render/feed.ts";
import { filtersIn } from "../../src/render/filters.ts";
import type { Levelled } from "../../src/render/levels.ts";
import { phraseSignals } from "../../src/render/phrase-cache.ts";
import { batchFrom } from "../../src/render/preview-set.ts";
import { rendererOf } from "../../src/render/renderer.ts";
import { ResponseEngine } from "../../src/response/responses.ts";
import { hssWithBleed, threeSingles } from "../fixtures/circuits.ts";
import { SciPyOverlapSave, soxFir } from "./rendering-peers.ts";
import { median, report } from "./stopwatch.ts";

const SAMPLE_RATE_HZ = 48_000;
const SECONDS = 10;
const ROUNDS = 9;

/** Ten seconds as each coil hears them: two phrases one after the other. */
function tenSeconds(build: Build): Feed {
  const engine = new ResponseEngine(build);
  const places = coilPlaces(build, engine.sources);
  const phrases = ["strum", "double-stops"].map((name) =>
    phraseSignals(name, places, stringSetOf(build), SAMPLE_RATE_HZ),
  );
  const coils = engine.sources.map((_, coil) => {
    const joined = phrases.flatMap((signals) => [...signals[coil]!]);
    return Float32Array.from(joined.slice(0, SECONDS * SAMPLE_RATE_HZ));
  });
  return { sampleRateHz: SAMPLE_RATE_HZ, drive: [], coils };
}

/** The whole set as the service renders it: filters, sound, levels and files, batch after batch. */
function renderSet(build: Build, feed: Feed, settings: readonly Settings[]): Uint8Array[] {
  const wavs: Uint8Array[] = [];
  let levels: readonly Levelled[] | undefined;
  while (wavs.length < settings.length) {
    const from = wavs.length;
    const renderer = rendererOf(new ResponseEngine(build), feed, undefined, settings.slice(from), NO_CHECKPOINT);
    const plan = { settings, level: "true", encoding: "pcm16", from, ...(levels ? { levels } : {}) } as const;
    const batch = batchFrom(renderer, plan, NO_CHECKPOINT);
    levels = batch.levels;
    wavs.push(...batch.wavs);
  }
  return wavs;
}

function filtersOf(build: Build, settings: readonly Settings[]) {
  const engine = new ResponseEngine(build);
  const plan = { engine, sampleRateHz: SAMPLE_RATE_HZ, hasDrive: false, hasCoils: true };
  return settings.map((each) => filtersIn(plan, each).taps);
}

test.each([
  ["three single coils", threeSingles()],
  ["HSS, coupled humbucker, treble bleed", hssWithBleed()],
])("55 previews × 10 s to 16-bit WAV, %s, against sox and SciPy", async (title, input) => {
  const build = readBuild(input);
  const settings = expandSweep(new Controls(build));
  const feed = tenSeconds(build);
  const job = { sampleRateHz: SAMPLE_RATE_HZ, inputs: feed.coils, sets: filtersOf(build, settings) };
  const directory = mkdtempSync(join(tmpdir(), "presolder-bench-"));
  const scipy = new SciPyOverlapSave(job, join(directory, "scipy"));
  try {
    const sox = soxFir(job, join(directory, "sox"));
    const size = await scipy.ready();
    const times = { ours: [] as number[], sox: [] as number[], soxPlain: [] as number[], scipy: [] as number[] };
    for (let round = -3; round < ROUNDS; round++) {
      const start = performance.now();
      const wavs = renderSet(build, feed, settings);
      const ours = performance.now() - start;
      expect(wavs).toHaveLength(55);
      if (round < 0) continue;
      times.ours.push(ours);
      times.scipy.push(await scipy.run());
      if (round % 3 > 0) continue;
      times.sox.push(sox(true));
      times.soxPlain.push(sox(false));
    }
    const ours = median(times.ours);
    const audioMs = settings.length * SECONDS * 1000;
    report(`rendering: ${title}`, {
      "the set (ms)": ours,
      "× real time": audioMs / ours,
      "sox fir, dithered (ms)": median(times.sox),
      "sox fir, not dithered (ms)": median(times.soxPlain),
      [`SciPy overlap-save, float64, size ${size}, not dithered (ms)`]: median(times.scipy),
      "ratio, sox dithered": median(times.sox) / ours,
      "ratio, sox not dithered": median(times.soxPlain) / ours,
      "ratio, SciPy": median(times.scipy) / ours,
    });
  } finally {
    scipy.stop();
    rmSync(directory, { recursive: true, force: true });
  }
});
