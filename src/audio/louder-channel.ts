const energy = (samples: Float32Array) => samples.reduce((sum, each) => sum + each * each, 0);

/** Of a recording's channels the one that something is plugged into; the first of those alike. */
export function louderChannel(channels: readonly Float32Array[]): Float32Array {
  const energies = channels.map(energy);
  return channels[energies.indexOf(Math.max(...energies))]!;
}
