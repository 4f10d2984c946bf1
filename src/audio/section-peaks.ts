import { CHUNK, RESULTS, SAMPLES, SECTION } from "./simd/kernels.ts";
import { type SoundKernel, soundKernel } from "./simd/sound-kernel.ts";

export { SECTION };

export interface SectionPeaks {
  /** The largest |x[n]| in each section. */
  readonly largest: Float32Array;
  /** The largest |x[n−1] − 2x[n] + x[n+1]| there, silence standing before the sound and after it, to the end of the section too. */
  readonly bends: Float32Array;
}

/** Of every SECTION samples, the last of them perhaps fewer; by plain arithmetic where `kernel` is null. */
export function sectionPeaks(samples: Float32Array, kernel: SoundKernel | null = soundKernel): SectionPeaks {
  return kernel ? quickPeaks(samples, kernel) : plainPeaks(samples);
}

function plainPeaks(samples: Float32Array): SectionPeaks {
  const largest = new Float32Array(Math.ceil(samples.length / SECTION));
  const bends = new Float32Array(largest.length);
  let before = 0;
  let here = samples[0] ?? 0;
  for (let n = 0; n < largest.length * SECTION; n++) {
    const section = Math.floor(n / SECTION);
    const after = n + 1 < samples.length ? samples[n + 1]! : 0;
    largest[section] = Math.max(largest[section]!, Math.abs(here));
    bends[section] = Math.max(bends[section]!, Math.abs(after - here - (here - before)));
    before = here;
    here = after;
  }
  return { largest, bends };
}

function quickPeaks(samples: Float32Array, { sectionPeaks, floats }: SoundKernel): SectionPeaks {
  const largest = new Float32Array(Math.ceil(samples.length / SECTION));
  const bends = new Float32Array(largest.length);
  const first = SAMPLES / 4;
  const sections = CHUNK / SECTION;
  const results = (from: number, count: number) => floats.subarray(RESULTS / 4 + from, RESULTS / 4 + from + count);
  for (let start = 0, section = 0; start < samples.length; start += CHUNK, section += sections) {
    const chunk = samples.subarray(start, start + CHUNK + 1);
    floats[first - 1] = start === 0 ? 0 : samples[start - 1]!;
    floats.set(chunk, first);
    floats.fill(0, first + chunk.length, first + CHUNK + 1);
    const count = Math.min(sections, largest.length - section);
    sectionPeaks(SAMPLES, SAMPLES + 4 * SECTION * count, RESULTS, RESULTS + 4 * sections);
    largest.set(results(0, count), section);
    bends.set(results(sections, count), section);
  }
  return { largest, bends };
}
