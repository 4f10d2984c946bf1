/** A context at the machine's own rate, where that is one of these. @param rates Hz, 48 000 among them */
export async function contextAt(rates: readonly number[]): Promise<AudioContext> {
  const context = new AudioContext({ latencyHint: "playback" });
  if (rates.includes(context.sampleRate)) return context;
  await context.close();
  return new AudioContext({ latencyHint: "playback", sampleRate: 48_000 });
}
