/** The part of an audio worklet's own scope that is used here; the library of the DOM does not have it. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Some twentieth of a second at a time: a message for each of the engine's own blocks would be 400 a second. */
const BLOCK_FRAMES = 2048;

/** Hands on what comes in, sample for sample. */
class Capture extends AudioWorkletProcessor {
  #held: Float32Array[][] = [];
  #frames = 0;

  process([input]: readonly (readonly Float32Array[])[]): boolean {
    const frames = input?.[0]?.length ?? 0;
    // The engine uses its blocks again.
    if (input && frames > 0) this.#held.push(input.map((channel) => channel.slice()));
    this.#frames += frames;
    if (this.#frames >= BLOCK_FRAMES) {
      this.port.postMessage(this.#held);
      this.#held = [];
      this.#frames = 0;
    }
    return true;
  }
}

registerProcessor("capture", Capture);
