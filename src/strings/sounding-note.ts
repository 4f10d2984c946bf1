import { driveVoice } from "./driven-voices.ts";
import { mixInto } from "./mix.ts";
import { moveFour, movePairs } from "./moved-voices.ts";
import { BLOCK, type Timeline } from "./timeline.ts";
import { exponentAt, type Mode, silentVoice, startVoice, type Voice, voiceOf } from "./voices.ts";

/** A partial ends 100 dB under the note's strongest, whatever coils listen. */
const DROP_RATIO = 1e-5;
/** Motions that share a pass over the mix. */
const TOGETHER = 4;
/** A recurrence in double precision is as good as exact for longer; then a voice is set anew. */
const BLOCKS_ON_ITS_OWN = 16;

/** Partials of which both planes are heard, one beside the other, and the planes heard alone; each filled up with silence. */
interface Heard {
  readonly pairs: readonly Voice[];
  readonly alone: readonly Voice[];
}

function filledUp(voices: Voice[], toMultipleOf: number, silence: Voice): Voice[] {
  while (voices.length % toMultipleOf > 0) voices.push(silence);
  return voices;
}

function arranged(voices: readonly Voice[], silence: Voice): Heard {
  const [pairs, alone]: [Voice[], Voice[]] = [[], []];
  for (let i = 0; i < voices.length; i += 1) {
    const [voice, next] = [voices[i]!, voices[i + 1]];
    if (voice.mode.weights === next?.mode.weights) {
      pairs.push(voice, next);
      i += 1;
    } else alone.push(voice);
  }
  return { pairs: filledUp(pairs, 2 * TOGETHER, silence), alone: filledUp(alone, TOGETHER, silence) };
}

/** One note on its way through the blocks. */
export class SoundingNote {
  readonly #time: Timeline;
  readonly #force: Float64Array;
  readonly #motions = Array.from({ length: TOGETHER }, () => new Float64Array(BLOCK));
  readonly #weights: Float64Array[] = Array.from({ length: TOGETHER }, () => new Float64Array(0));
  readonly #mixes: readonly Float64Array[];
  readonly #silence: Voice;
  #voices: Voice[];
  #heard: Heard;

  constructor(modes: readonly Mode[], time: Timeline, force: Float64Array, coils: number) {
    this.#time = time;
    this.#force = force;
    this.#mixes = Array.from({ length: coils }, () => new Float64Array(BLOCK));
    this.#silence = silentVoice(coils);
    this.#voices = modes.map(voiceOf);
    this.#heard = arranged(this.#voices, this.#silence);
  }

  /** Leaves out what is no longer heard. @returns whether anything is */
  isHeard(block: number): boolean {
    if (this.#isDriven(block)) return true;
    if (block === 0 || this.#isDriven(block - 1)) this.#setFloor(block);
    const before = this.#voices.length;
    this.#voices = this.#voices.filter(
      ({ mode, leastExponent }) => exponentAt(mode, this.#time, block) > leastExponent,
    );
    if (this.#voices.length < before) this.#heard = arranged(this.#voices, this.#silence);
    return this.#voices.length > 0;
  }

  /** From here on nothing takes up anything more. */
  #setFloor(block: number): void {
    const logs = this.#voices.map(({ sine, cosine }) => Math.log(Math.hypot(sine, cosine)));
    const now = logs.map((log, i) => log + exponentAt(this.#voices[i]!.mode, this.#time, block));
    const floor = Math.log(DROP_RATIO) + Math.max(...now);
    for (const [i, voice] of this.#voices.entries()) voice.leastExponent = floor - logs[i]!;
  }

  /** What each coil gives through a block; the next call writes over it. */
  block(block: number): readonly Float64Array[] {
    for (const mix of this.#mixes) mix.fill(0);
    if (this.#startsAnew(block)) for (const voice of this.#voices) startVoice(voice, this.#time, block);
    const { pairs, alone } = this.#heard;
    if (this.#isDriven(block)) {
      this.#drive(pairs, block);
      this.#drive(alone, block);
    } else {
      this.#movePairs(pairs);
      this.#moveAlone(alone);
    }
    return this.#mixes;
  }

  #isDriven(block: number): boolean {
    return block >= 0 && block * BLOCK < this.#force.length;
  }

  #startsAnew(block: number): boolean {
    return block % BLOCKS_ON_ITS_OWN === 0 || this.#isDriven(block - 1) || this.#time.turns[block] === 1;
  }

  #drive(voices: readonly Voice[], block: number): void {
    for (let start = 0; start < voices.length; start += TOGETHER) {
      for (let i = 0; i < TOGETHER; i += 1) {
        driveVoice(voices[start + i]!, this.#motions[i]!, this.#force, this.#time, block);
      }
      this.#mix(voices, start, 1);
    }
  }

  #movePairs(voices: readonly Voice[]): void {
    const [motionA, motionB, motionC, motionD] = this.#motions;
    for (let start = 0; start < voices.length; start += 2 * TOGETHER) {
      movePairs(voices, start, motionA!, motionB!);
      movePairs(voices, start + TOGETHER, motionC!, motionD!);
      this.#mix(voices, start, 2);
    }
  }

  #moveAlone(voices: readonly Voice[]): void {
    for (let start = 0; start < voices.length; start += TOGETHER) {
      moveFour(voices, start, this.#motions);
      this.#mix(voices, start, 1);
    }
  }

  #mix(voices: readonly Voice[], start: number, stride: 1 | 2): void {
    for (let i = 0; i < TOGETHER; i += 1) this.#weights[i] = voices[start + i * stride]!.mode.weights;
    mixInto(this.#mixes, this.#motions, this.#weights);
  }
}
