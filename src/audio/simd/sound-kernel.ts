// The one door to loops that four samples at a time make quicker: whoever uses one has a plain loop beside it, as reference and
// where there is no SIMD. Each earns its place: without it a set of 55 previews of 10 s takes a core longer by a fifth (weighted
// energies), by half and more (section peaks) and to more than double (dither), measured one by one on a two-core machine.
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
