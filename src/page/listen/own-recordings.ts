const decoded = new WeakMap<File, Promise<AudioBuffer>>();

async function decode(context: BaseAudioContext, file: File): Promise<AudioBuffer> {
  const bytes = await file.arrayBuffer();
  try {
    return await context.decodeAudioData(bytes);
  } catch {
    throw new Error(`${file.name} cannot be read as sound; expected a WAV file.`);
  }
}

/**
 * Decodes a file for the sake of the answer alone: a context of any rate will do, and its sound is not kept.
 * @throws Error naming the file where it is no sound
 */
export async function checkReadable(file: File): Promise<void> {
  await decode(new OfflineAudioContext(1, 1, 48_000), file);
}

/** A file of the person's own as sound, decoded here and kept here. */
export function ownRecording(context: BaseAudioContext, file: File): Promise<AudioBuffer> {
  const known = decoded.get(file);
  if (known) return known;
  const sound = decode(context, file);
  decoded.set(file, sound);
  return sound;
}
