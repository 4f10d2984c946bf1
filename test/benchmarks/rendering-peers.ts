import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { LineProcess, ONE_THREAD, type Timing } from "./line-process.ts";

/** What every contender renders: each set of filters over the same inputs, one filter an input. */
export interface RenderingJob {
  readonly sampleRateHz: number;
  readonly inputs: readonly Float32Array[];
  readonly sets: readonly (readonly Float64Array[])[];
}

function isSilent(taps: Float64Array): boolean {
  return taps.every((tap) => tap === 0);
}

/** The last line of bash's `times`: what its children took, "0m1.234s 0m0.567s". */
function childrenMs(output: string): number {
  const times = [...(output.trim().split("\n").at(-1) ?? "").matchAll(/(\d+)m([\d.]+)s/g)];
  if (times.length !== 2) throw new Error(`bash's times answered ${output}`);
  return times.reduce((sum, [, minutes, seconds]) => sum + 60_000 * Number(minutes) + 1000 * Number(seconds), 0);
}

/**
 * One sox process a setting, through a single filter of the set: the plain way at the command line. It mixes nothing, so it has
 * less to do than the others.
 */
export function soxFir({ sampleRateHz, inputs, sets }: RenderingJob, directory: string): (dithered: boolean) => Timing {
  mkdirSync(directory, { recursive: true });
  const input = join(directory, "input.wav");
  writeFileSync(input, encodeWav({ sampleRateHz, channels: [inputs[0]!] }, "float32"));
  sets.forEach((set, index) => {
    const heard = set.find((taps) => !isSilent(taps)) ?? set[0]!;
    writeFileSync(join(directory, `filter${index}.txt`), heard.join("\n"));
  });
  return (dithered) => {
    const sox = `sox -V1 --single-threaded ${dithered ? "" : "-D"} input.wav -b 16 out$i.wav fir filter$i.txt`;
    const script = `set -e; for ((i = 0; i < ${sets.length}; i++)); do ${sox}; done; times`;
    const start = performance.now();
    const run = spawnSync("bash", ["-c", script], { cwd: directory, env: ONE_THREAD, encoding: "utf8" });
    if (run.status !== 0) throw new Error(run.stderr);
    return { wallMs: performance.now() - start, coreMs: childrenMs(run.stdout) };
  };
}

/**
 * Overlap-save in float64, the inputs transformed once, the coils summed as spectra, silent coils left out, whole files as 16-bit
 * bytes in memory. It tries transforms of several sizes and keeps the quickest. The first line is the job and answered by that
 * size; every other line is a run.
 */
const OVERLAP_SAVE = `
import sys, json, time, io, wave
import numpy as np
from scipy import fft
job = json.loads(sys.stdin.readline())
folder, rate = job["folder"], job["rate"]
inputs = [np.fromfile(f"{folder}/input{i}.f32", np.float32).astype(np.float64) for i in range(job["inputs"])]
sets = [[np.fromfile(f"{folder}/set{s}-{i}.f64") for i in range(len(inputs))] for s in range(job["sets"])]
sets = [[(i, h) for i, h in enumerate(hs) if h.any()] for hs in sets]
taps = max(len(h) for hs in sets for i, h in hs)
count = max(map(len, inputs)) + taps - 1

def wav(samples):
    file = io.BytesIO()
    with wave.open(file, "wb") as out:
        out.setnchannels(1); out.setsampwidth(2); out.setframerate(rate)
        out.writeframes(samples.tobytes())
    return file.getvalue()

def render(size):
    hop = size - taps + 1
    blocks = -(-count // hop)
    spectra = []
    for x in inputs:
        padded = np.zeros((blocks - 1) * hop + size)
        padded[taps - 1:taps - 1 + len(x)] = x
        spectra.append(fft.rfft(np.lib.stride_tricks.sliding_window_view(padded, size)[::hop], workers=1))
    files = []
    for hs in sets:
        total = None
        for i, h in hs:
            product = spectra[i] * fft.rfft(h, size)
            total = product if total is None else np.add(total, product, out=total)
        y = fft.irfft(total, size, overwrite_x=True, workers=1)[:, taps - 1:].reshape(-1)[:count]
        y *= 32768
        np.rint(y, out=y)
        np.clip(y, -32768, 32767, out=y)
        files.append(wav(y.astype(np.int16)))
    return files

def timed(size):
    wall, core = time.perf_counter(), time.process_time()
    files = render(size)
    assert len(files) == len(sets)
    return {"wallMs": (time.perf_counter() - wall) * 1000, "coreMs": (time.process_time() - core) * 1000}

sizes = [s for s in (4096, 8192, 16384, 32768) if s >= 2 * taps]
best = min(sizes, key=lambda size: min(timed(size)["coreMs"] for _ in range(3)))
print(json.dumps(best), flush=True)
for line in sys.stdin:
    print(json.dumps(timed(best)), flush=True)
`;

/** SciPy in a process of its own, its start left out of every run. */
export async function scipyOverlapSave({ sampleRateHz, inputs, sets }: RenderingJob, folder: string) {
  mkdirSync(folder, { recursive: true });
  inputs.forEach((input, i) => void writeFileSync(join(folder, `input${i}.f32`), input));
  sets.forEach((set, s) => {
    set.forEach((taps, i) => void writeFileSync(join(folder, `set${s}-${i}.f64`), taps));
  });
  const scipy = new LineProcess("python3", ["-c", OVERLAP_SAVE]);
  const size = await scipy.ask<number>({ folder, rate: sampleRateHz, inputs: inputs.length, sets: sets.length });
  return { scipy, size };
}
