import { DriveStream } from "../../../listening/drive/drive-stream.ts";
import { driveLaw } from "../../../listening/drive/law.ts";

/** The part of an audio worklet's own scope that is used here; the library of the DOM does not have it. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
interface Options {
  readonly processorOptions: { readonly drive: number };
}
declare function registerProcessor(name: string, processor: new (options: Options) => AudioWorkletProcessor): void;

/** The driven amplifier of a live sound, channel by channel. */
class Drive extends AudioWorkletProcessor {
  readonly #drive: number;
  readonly #streams: DriveStream[] = [];
  #isOver = false;

  constructor({ processorOptions }: Options) {
    super();
    this.#drive = processorOptions.drive;
    this.port.onmessage = () => {
      this.#isOver = true;
    };
  }

  process([input = []]: readonly (readonly Float32Array[])[], [output = []]: readonly Float32Array[][]): boolean {
    for (const [channel, samples] of output.entries()) {
      this.#streams[channel] ??= new DriveStream(driveLaw(this.#drive), samples.length);
      // What ended is followed by silence, in which it rings out.
      this.#streams[channel]!.run(input[channel] ?? new Float32Array(samples.length), samples);
    }
    return !this.#isOver;
  }
}

registerProcessor("drive", Drive);
