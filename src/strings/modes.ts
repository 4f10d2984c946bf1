import { SoundingNote } from "./sounding-note.ts";
import { BLOCK, type Timeline } from "./timeline.ts";
import type { Mode } from "./voices.ts";

/**
 * Adds a note to every coil's signal, a block at a time: in each, the modes still heard are mixed in double precision.
 * @param force what drives the modes beside the pluck, from the note's first sample on; may be empty
 * @param checkpoint called between blocks; may throw to end the work
 */
export function addNote(
  outputs: readonly Float32Array[],
  modes: readonly Mode[],
  time: Timeline,
  force: Float64Array,
  checkpoint?: () => void,
): void {
  const note = new SoundingNote(modes, time, force, outputs.length);
  for (let block = 0; block + 1 < time.seconds.length && note.isHeard(block); block += 1) {
    checkpoint?.();
    const mixes = note.block(block);
    for (let coil = 0; coil < outputs.length; coil += 1) {
      if (time.gain) swell(mixes[coil]!, time.gain[block]!, time.gain[block + 1]!);
      addBlock(outputs[coil]!, mixes[coil]!, time.firstSample + block * BLOCK);
    }
  }
}

/** A gain that goes straight from edge to edge. */
function swell(mix: Float64Array, from: number, to: number): void {
  const step = (to - from) / BLOCK;
  for (let i = 0; i < BLOCK; i += 1) mix[i] = mix[i]! * (from + i * step);
}

function addBlock(output: Float32Array, mix: Float64Array, offset: number): void {
  const end = Math.min(BLOCK, output.length - offset);
  for (let i = 0; i < end; i += 1) output[offset + i] = output[offset + i]! + mix[i]!;
}
