import { assemble } from "./assembler.ts";
import { CHUNK, KERNELS, RESULTS } from "./kernels.ts";

interface Kernels {
  readonly memory: WebAssembly.Memory;
  sectionPeaks(from: number, end: number, to: number, bends: number): void;
  dithered(from: number, end: number, to: number): void;
  weightedEnergies(from: number, end: number): void;
}

/** The kernels and their memory, as numbers of each kind. */
export interface SoundKernel extends Omit<Kernels, "memory"> {
  readonly floats: Float32Array;
  readonly doubles: Float64Array;
  readonly integers: Int32Array;
  readonly shorts: Int16Array;
}

const PAGE_BYTES = 65_536;

/** Loops over samples, four at a time. Its memory is one page and never grows: sound goes through it in chunks. */
function instantiate(): SoundKernel | null {
  const bytes = assemble(KERNELS, Math.ceil((RESULTS + 2 * CHUNK) / PAGE_BYTES));
  if (!WebAssembly.validate(bytes)) return null;
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(bytes));
  const { memory, ...functions } = exports as unknown as Kernels;
  const { buffer } = memory;
  return {
    ...functions,
    floats: new Float32Array(buffer),
    doubles: new Float64Array(buffer),
    integers: new Int32Array(buffer),
    shorts: new Int16Array(buffer),
  };
}

/** Null where the processor or the runtime has no WebAssembly SIMD, and in the page, whose security policy compiles none. */
export const soundKernel = typeof window === "undefined" ? instantiate() : null;
