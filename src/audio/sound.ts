/** Sampled sound; full scale is ±1 and every channel has the same number of samples. */
export interface Sound {
  readonly sampleRateHz: number;
  readonly channels: readonly Float32Array[];
}

/** @throws RangeError for a sample that is NaN or infinite. */
export function requireFinite({ channels }: Sound): void {
  for (const samples of channels) {
    const n = samples.findIndex((sample) => !Number.isFinite(sample));
    if (n >= 0) throw new RangeError(`Sample ${n} is ${samples[n]}, which no file may hold`);
  }
}
