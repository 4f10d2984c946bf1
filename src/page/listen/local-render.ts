import { integratedLoudness } from "../../audio/loudness.ts";
import { amplitudeFromDecibels } from "../../decibels.ts";
import { MATCHED_LUFS } from "../../render/levels.ts";

/** Keeps peaks of a sharp filter from clipping at the loudspeaker. */
const MAX_PEAK = 0.98;

/**
 * A recording through a filter, rendered in the browser; as long as the service makes it, the filter's ring-out included.
 * @param noise added behind the filter, each repeated without end
 */
export async function renderThrough(
  sound: AudioBuffer,
  impulse: AudioBuffer,
  noise: readonly AudioBuffer[] = [],
): Promise<AudioBuffer> {
  const length = sound.length + impulse.length - 1;
  const context = new OfflineAudioContext(sound.numberOfChannels, length, sound.sampleRate);
  const convolver = new ConvolverNode(context, { disableNormalization: true, buffer: impulse });
  const source = new AudioBufferSourceNode(context, { buffer: sound });
  source.connect(convolver).connect(context.destination);
  source.start();
  for (const buffer of noise) {
    const repeated = new AudioBufferSourceNode(context, { buffer, loop: true });
    repeated.connect(context.destination);
    repeated.start();
  }
  return context.startRendering();
}

/** The factor that brings a sound to the matched loudness without clipping; 1 for silence. */
export function matchedGain(sound: AudioBuffer): number {
  const channels = Array.from({ length: Math.min(2, sound.numberOfChannels) }, (_, index) =>
    sound.getChannelData(index),
  );
  const lufs = integratedLoudness({ sampleRateHz: sound.sampleRate, channels });
  if (lufs === null) return 1;
  const peak = channels.reduce((top, samples) => samples.reduce((max, each) => Math.max(max, Math.abs(each)), top), 0);
  return Math.min(amplitudeFromDecibels(MATCHED_LUFS - lufs), MAX_PEAK / peak);
}

export function scaledBuffer(sound: AudioBuffer, gain: number): AudioBuffer {
  for (let channel = 0; channel < sound.numberOfChannels; channel++) {
    const samples = sound.getChannelData(channel);
    for (let i = 0; i < samples.length; i++) samples[i]! *= gain;
  }
  return sound;
}
