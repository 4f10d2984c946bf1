import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { encodeWav } from "../../src/audio/wav-encode.ts";

/** What every contender renders: each set of filters over the same inputs, one filter an input. */
export interface RenderingJob {
  readonly sampleRateHz: number;
  readonly inputs: readonly Float32Array[];
  readonly sets: readonly (readonly Float64Array[])[];
}

function isSilent(taps: Float64Array): boolean {
  return taps.every((tap) => tap === 0);
}

const ONE_THREAD = { ...process.env, OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1", MKL_NUM_THREADS: "1" };

/**
 * One sox process a setting, through a single filter of the set: the plain way at the command line. It mixes nothing, so it has
 * less to do than the others. Answers the milliseconds of the whole.
 */
export function soxFir({ sampleRateHz, inputs, sets }: RenderingJob, directory: string): (dithered: boolean) => number {
  mkdirSync(directory, { recursive: true });
  const input = join(directory, "input.wav");
  writeFileSync(input, encodeWav({ sampleRateHz, channels: [inputs[0]!] }, "float32"));
  const coefficients = sets.map((set, index) => {
    const path = join(directory, `filter${index}.txt`);
    writeFileSync(path, (set.find((taps) => !isSilent(taps)) ?? set[0]!).join("\n"));
    return path;
  });
  return (dithered) => {
    const start = performance.now();
    for (const [index, path] of coefficients.entries()) {
      const output = join(directory, `out${index}.wav`);
      const options = dithered ? [] : ["-D"];
      const run = spawnSync("sox", ["-V1", "--single-threaded", ...options, input, "-b", "16", output, "fir", path]);
      if (run.status !== 0) throw new Error(run.stderr.toString());
    }
    return performance.now() - start;
  };
}

/**
 * Overlap-save in float64, the inputs transformed once, the coils summed as spectra, silent coils left out, whole files as 16-bit
 * bytes in memory. It tries transforms of several sizes and keeps the quickest. A line in is a run, a line out its milliseconds.
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
    start = time.perf_counter()
    files = render(size)
    assert len(files) == len(sets)
    return (time.perf_counter() - start) * 1000

sizes = [s for s in (4096, 8192, 16384, 32768) if s >= 2 * taps]
best = min(sizes, key=lambda size: min(timed(size), timed(size)))
print(json.dumps(best), flush=True)
for line in sys.stdin:
    print(json.dumps(timed(best)), flush=True)
`;

export class SciPyOverlapSave {
  readonly #process: ChildProcess;
  readonly #lines: AsyncIterator<string>;

  constructor({ sampleRateHz, inputs, sets }: RenderingJob, directory: string) {
    mkdirSync(directory, { recursive: true });
    inputs.forEach((input, i) => void writeFileSync(join(directory, `input${i}.f32`), input));
    sets.forEach((set, s) => {
      set.forEach((taps, i) => void writeFileSync(join(directory, `set${s}-${i}.f64`), taps));
    });
    this.#process = spawn("python3", ["-c", OVERLAP_SAVE], { env: ONE_THREAD, stdio: ["pipe", "pipe", "inherit"] });
    this.#lines = createInterface({ input: this.#process.stdout! })[Symbol.asyncIterator]();
    this.#send(JSON.stringify({ folder: directory, rate: sampleRateHz, inputs: inputs.length, sets: sets.length }));
  }

  #send(line: string): void {
    this.#process.stdin!.write(`${line}\n`);
  }

  async #answer(): Promise<number> {
    const { value, done } = await this.#lines.next();
    if (done) throw new Error("SciPy stopped before it answered");
    return JSON.parse(value) as number;
  }

  /** The size of transform that it found quickest. */
  async ready(): Promise<number> {
    return this.#answer();
  }

  /** Milliseconds of one run, measured in the interpreter, its start left out. */
  async run(): Promise<number> {
    this.#send("run");
    return this.#answer();
  }

  stop(): void {
    this.#process.stdin!.end();
  }
}
