import create from "@echogarden/pffft-wasm/simd";

/** PFFFT (Pommier, after FFTPACK) as WebAssembly: transforms of float32 by SIMD. Buffers are addresses in its own memory. */
export interface Pffft {
  /** The whole memory; another object after it has grown. */
  readonly HEAPF32: Float32Array;
  _pffft_new_setup(size: number, kind: 0): number;
  _pffft_destroy_setup(setup: number): void;
  /** 0 where there is no memory left. */
  _pffft_aligned_malloc(bytes: number): number;
  _pffft_aligned_free(address: number): void;
  /** Bins come in an order of its own, not scaled either way; `direction` 0 is forward. */
  _pffft_transform(setup: number, input: number, output: number, work: number, direction: 0 | 1): void;
  /** sum += a·b·scale, of spectra in that order. */
  _pffft_zconvolve_accumulate(setup: number, a: number, b: number, sum: number, scale: number): void;
}

/** A module of one function that makes a vector from a number (WebAssembly SIMD, opcodes fd 0f and fd 62). */
const SIMD_PROBE = Uint8Array.of(
  ...[0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0],
  ...[10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11],
);

/** Null where the processor or the runtime has no WebAssembly SIMD. */
export const pffft: Pffft | null = WebAssembly.validate(SIMD_PROBE) ? await create() : null;
