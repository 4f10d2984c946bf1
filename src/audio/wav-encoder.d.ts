declare module "wav-encoder" {
  interface AudioData {
    readonly sampleRate: number;
    readonly channelData: readonly Float32Array[];
  }
  interface EncodeOptions {
    readonly bitDepth?: 8 | 16 | 24 | 32;
    readonly float?: boolean;
    /** Full scale is 2^(bits−1) on both sides, clipped; without it positive samples are scaled by one step less. */
    readonly symmetric?: boolean;
  }
  const wavEncoder: { readonly encode: { sync(audio: AudioData, options?: EncodeOptions): ArrayBuffer } };
  export default wavEncoder;
}
