import { expect, test } from "vitest";
import { createChain } from "../../src/listening/chain.ts";
import { driveLaw } from "../../src/listening/drive/law.ts";
import { speakerFilter } from "../../src/listening/speaker/filter.ts";
import { rendererOf } from "../../src/render/renderer.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { LineProcess, type Timing } from "./line-process.ts";
import { workOf } from "./set-job.ts";
import { median, report } from "./stopwatch.ts";

const SAMPLE_RATE_HZ = 48_000;
const SECONDS = 10;
const ROUNDS = 15;
const DRIVE = 7;

/** The same by SciPy: its own filters about the clipper, which are shorter than ours, and its own convolution. */
const SCIPY = `
import sys, json, time
import numpy as np
from scipy import signal
job = json.loads(sys.stdin.readline())
x = np.array(job["volts"])
taps = np.array(job["taps"])
def speaker(y): return signal.oaconvolve(y, taps)
def driven(y):
    up = signal.resample_poly(y, 8, 1)
    up *= job["perVolt"]
    np.tanh(up, out=up)
    up *= job["driveVolts"]
    return signal.resample_poly(up, 1, 8)
print(json.dumps(len(x)), flush=True)
for line in sys.stdin:
    wall, core = time.perf_counter(), time.process_time()
    y = speaker(driven(x) if json.loads(line) == "driven" else x)
    assert len(y) > len(x)
    print(json.dumps({"wallMs": (time.perf_counter() - wall) * 1000, "coreMs": (time.process_time() - core) * 1000}), flush=True)
`;

function timed(act: () => { length: number }): number {
  const before = process.cpuUsage();
  expect(act().length).toBeGreaterThan(SECONDS * SAMPLE_RATE_HZ);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

test("10 s through the listening chain, against the same without it and against SciPy", async () => {
  const { build, feed, settings } = workOf({ build: threeSingles(), seconds: SECONDS, sampleRateHz: SAMPLE_RATE_HZ });
  const renderer = rendererOf({ engine: new ResponseEngine(build), feed }, settings, { checkpoint: () => undefined });
  const jack = renderer.render(settings[0]!);
  const [clean, driven] = [0, DRIVE].map((drive) => createChain({ drive }, SAMPLE_RATE_HZ)) as [
    ReturnType<typeof createChain>,
    ReturnType<typeof createChain>,
  ];
  const scipy = new LineProcess("python3", ["-c", SCIPY]);
  try {
    const { perVolt, volts: driveVolts } = driveLaw(DRIVE);
    const job = { volts: [...jack.channels[0]!], taps: [...speakerFilter(SAMPLE_RATE_HZ).taps], perVolt, driveVolts };
    expect(await scipy.ask(job)).toBe(jack.channels[0]!.length);
    const runs = { plain: [] as number[], clean: [] as number[], driven: [] as number[] };
    const peers = { clean: [] as number[], driven: [] as number[] };
    for (let round = 0; round < ROUNDS; round++) {
      runs.plain.push(timed(() => renderer.render(settings[round % settings.length]!).channels[0]!));
      runs.clean.push(timed(() => clean.through(jack).channels[0]!));
      runs.driven.push(timed(() => driven.through(jack).channels[0]!));
      peers.clean.push((await scipy.ask<Timing>("clean")).coreMs);
      peers.driven.push((await scipy.ask<Timing>("driven")).coreMs);
    }
    const [plain, ours, oursDriven] = [median(runs.plain), median(runs.clean), median(runs.driven)];
    const [theirs, theirsDriven] = [median(peers.clean), median(peers.driven)];
    report("listening: 10 s at 48 kHz, mono, by the core", {
      "the guard alone, one setting (ms)": plain,
      "amplifier and speaker, not driven, besides (ms)": ours,
      "amplifier and speaker, driven, besides (ms)": oursDriven,
      "with / without the chain, not driven": (plain + ours) / plain,
      "with / without the chain, driven": (plain + oursDriven) / plain,
      "SciPy oaconvolve (ms)": theirs,
      "SciPy resample_poly, tanh, resample_poly, oaconvolve (ms)": theirsDriven,
      "SciPy / ours, not driven": theirs / ours,
      "SciPy / ours, driven": theirsDriven / oursDriven,
    });
  } finally {
    scipy.stop();
  }
});
