/** A float32 WAV's first channel. */
export function decodeFloatWav(bytes: Buffer): { sampleRateHz: number; samples: Float32Array } {
  let [sampleRateHz, channels] = [0, 1];
  for (let at = 12; at + 8 <= bytes.length; ) {
    const [id, size] = [bytes.toString("latin1", at, at + 4), bytes.readUInt32LE(at + 4)];
    if (id === "fmt ") {
      channels = bytes.readUInt16LE(at + 10);
      sampleRateHz = bytes.readUInt32LE(at + 12);
    }
    if (id === "data") {
      const frames = Math.floor(size / 4 / channels);
      const samples = Float32Array.from({ length: frames }, (_, n) => bytes.readFloatLE(at + 8 + n * 4 * channels));
      return { sampleRateHz, samples };
    }
    at += 8 + size + (size % 2);
  }
  throw new Error("no data chunk");
}

/** Level in dB in a third of an octave around each frequency, by Goertzel's sums over 16 frequencies of the band. */
export function levelsAt(
  { sampleRateHz, samples }: { sampleRateHz: number; samples: Float32Array },
  frequenciesHz: readonly number[],
): number[] {
  const LINES = 16;
  return frequenciesHz.map((centre) => {
    let power = 0;
    for (let line = 0; line < LINES; line++) {
      const omega = (2 * Math.PI * centre * 2 ** ((line / (LINES - 1) - 0.5) / 3)) / sampleRateHz;
      const factor = 2 * Math.cos(omega);
      let [s1, s2] = [0, 0];
      for (const sample of samples) [s1, s2] = [sample + factor * s1 - s2, s1];
      power += s1 * s1 + s2 * s2 - factor * s1 * s2;
    }
    return 10 * Math.log10(power / LINES);
  });
}

export function peakOf(samples: Float32Array): number {
  return samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0);
}
