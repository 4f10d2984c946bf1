/** Sampled sound; full scale is ±1 and every channel has the same number of samples. */
export interface Sound {
  readonly sampleRateHz: number;
  readonly channels: readonly Float32Array[];
}
