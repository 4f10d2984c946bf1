interface Pcm {
  readonly sampleRateHz?: number;
  readonly channels?: number;
  readonly bits?: number;
  readonly frames?: number;
}

/** A WAV file of silence, written by hand (RIFF, format tag 1), so that its header can say what no writer of ours would. */
export function pcm({ sampleRateHz = 8_000, channels = 1, bits = 16, frames = 100 }: Pcm = {}): Buffer {
  const bytesPerFrame = channels * (bits / 8);
  const data = Buffer.alloc(frames * bytesPerFrame, bits === 8 ? 128 : 0);
  const head = Buffer.alloc(44);
  head.write("RIFF", 0, "latin1");
  head.writeUInt32LE(36 + data.length, 4);
  head.write("WAVEfmt ", 8, "latin1");
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(channels, 22);
  head.writeUInt32LE(sampleRateHz, 24);
  head.writeUInt32LE(sampleRateHz * bytesPerFrame, 28);
  head.writeUInt16LE(bytesPerFrame, 32);
  head.writeUInt16LE(bits, 34);
  head.write("data", 36, "latin1");
  head.writeUInt32LE(data.length, 40);
  return Buffer.concat([head, data]);
}
