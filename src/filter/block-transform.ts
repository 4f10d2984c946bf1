import type { Pffft } from "./pffft.ts";

const FLOAT_BYTES = 4;

/**
 * Spectra of blocks of one size, multiplied and summed in the module's memory, in single precision. Usable from `attach` until any
 * other memory is taken there.
 */
export class BlockTransform {
  readonly size: number;
  readonly #pffft: Pffft;
  readonly #setup: number;
  /** `block` holds samples or their spectrum, `response` a filter's spectrum, `sum` products. */
  readonly #addresses: Readonly<Record<"block" | "response" | "sum" | "work", number>>;
  #block: Float32Array = new Float32Array(0);
  #response: Float32Array = this.#block;
  #sum: Float32Array = this.#block;

  /** @param size a power of two from 32 up */
  constructor(pffft: Pffft, size: number) {
    this.size = size;
    this.#pffft = pffft;
    this.#setup = pffft._pffft_new_setup(size, 0);
    const take = () => pffft._pffft_aligned_malloc(size * FLOAT_BYTES);
    this.#addresses = { block: take(), response: take(), sum: take(), work: take() };
    if (this.#setup === 0 || Object.values(this.#addresses).includes(0)) {
      this.free();
      throw new RangeError(`There is no memory for transforms of ${size} samples`);
    }
  }

  get block(): Float32Array {
    return this.#block;
  }

  get response(): Float32Array {
    return this.#response;
  }

  /** Looks its buffers up anew, for the memory may have moved as it grew. */
  attach(): this {
    const view = (address: number) =>
      this.#pffft.HEAPF32.subarray(address / FLOAT_BYTES, address / FLOAT_BYTES + this.size);
    this.#block = view(this.#addresses.block);
    this.#response = view(this.#addresses.response);
    this.#sum = view(this.#addresses.sum);
    return this;
  }

  /** The samples in `block` become their spectrum. */
  forward(): void {
    const { block, work } = this.#addresses;
    this.#pffft._pffft_transform(this.#setup, block, block, work, 0);
  }

  clear(): void {
    this.#sum.fill(0);
  }

  /** Adds the product of `block` and `response` to the sum. */
  accumulate(): void {
    const { block, response, sum } = this.#addresses;
    this.#pffft._pffft_zconvolve_accumulate(this.#setup, block, response, sum, 1 / this.size);
  }

  /** `block` becomes the samples of the sum. */
  inverse(): void {
    const { block, sum, work } = this.#addresses;
    this.#pffft._pffft_transform(this.#setup, sum, block, work, 1);
  }

  free(): void {
    for (const address of Object.values(this.#addresses)) if (address !== 0) this.#pffft._pffft_aligned_free(address);
    if (this.#setup !== 0) this.#pffft._pffft_destroy_setup(this.#setup);
  }
}

/** All sizes up to this together hold 3 MB. */
const LARGEST_KEPT_SIZE = 1 << 16;
const kept = new Map<number, BlockTransform>();

/** Lends the transform of a size. Its tables depend on the size alone; large ones are given back at the end. */
export function withTransform<T>(pffft: Pffft, size: number, use: (transform: BlockTransform) => T): T {
  const transform = kept.get(size) ?? new BlockTransform(pffft, size);
  if (size <= LARGEST_KEPT_SIZE) kept.set(size, transform);
  try {
    return use(transform.attach());
  } finally {
    if (size > LARGEST_KEPT_SIZE) transform.free();
  }
}
