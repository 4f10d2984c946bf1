import { BLOCK } from "./timeline.ts";
import type { Voice } from "./voices.ts";

/**
 * Moves four voices through a block, each into a buffer of its own. Side by side, since one recurrence waits for its own last sample;
 * unrolled with every state in a local, which takes half the time of a loop over them.
 */
export function moveFour(voices: readonly Voice[], start: number, motions: readonly Float64Array[]): void {
  const [voiceA, voiceB, voiceC, voiceD] = [voices[start]!, voices[start + 1]!, voices[start + 2]!, voices[start + 3]!];
  const { first: firstA, second: secondA } = voiceA;
  const { first: firstB, second: secondB } = voiceB;
  const { first: firstC, second: secondC } = voiceC;
  const { first: firstD, second: secondD } = voiceD;
  const [motionA, motionB, motionC, motionD] = [motions[0]!, motions[1]!, motions[2]!, motions[3]!];
  let [a, b, c, d] = [voiceA.current, voiceB.current, voiceC.current, voiceD.current];
  let [lastA, lastB, lastC, lastD] = [voiceA.previous, voiceB.previous, voiceC.previous, voiceD.previous];
  for (let i = 0; i < BLOCK; i += 1) {
    motionA[i] = a;
    motionB[i] = b;
    motionC[i] = c;
    motionD[i] = d;
    const nextA = firstA * a - secondA * lastA;
    const nextB = firstB * b - secondB * lastB;
    const nextC = firstC * c - secondC * lastC;
    const nextD = firstD * d - secondD * lastD;
    lastA = a;
    lastB = b;
    lastC = c;
    lastD = d;
    a = nextA;
    b = nextB;
    c = nextC;
    d = nextD;
  }
  [voiceA.current, voiceB.current, voiceC.current, voiceD.current] = [a, b, c, d];
  [voiceA.previous, voiceB.previous, voiceC.previous, voiceD.previous] = [lastA, lastB, lastC, lastD];
}

/**
 * As `moveFour`, of two partials with both their planes: the coils hear the two planes' sum. Written out once more, since adding up
 * what `moveFour` wrote takes a third longer for the whole phrase.
 */
export function movePairs(voices: readonly Voice[], start: number, sumA: Float64Array, sumC: Float64Array): void {
  const [voiceA, voiceB, voiceC, voiceD] = [voices[start]!, voices[start + 1]!, voices[start + 2]!, voices[start + 3]!];
  const { first: firstA, second: secondA } = voiceA;
  const { first: firstB, second: secondB } = voiceB;
  const { first: firstC, second: secondC } = voiceC;
  const { first: firstD, second: secondD } = voiceD;
  let [a, b, c, d] = [voiceA.current, voiceB.current, voiceC.current, voiceD.current];
  let [lastA, lastB, lastC, lastD] = [voiceA.previous, voiceB.previous, voiceC.previous, voiceD.previous];
  for (let i = 0; i < BLOCK; i += 1) {
    sumA[i] = a + b;
    sumC[i] = c + d;
    const nextA = firstA * a - secondA * lastA;
    const nextB = firstB * b - secondB * lastB;
    const nextC = firstC * c - secondC * lastC;
    const nextD = firstD * d - secondD * lastD;
    lastA = a;
    lastB = b;
    lastC = c;
    lastD = d;
    a = nextA;
    b = nextB;
    c = nextC;
    d = nextD;
  }
  [voiceA.current, voiceB.current, voiceC.current, voiceD.current] = [a, b, c, d];
  [voiceA.previous, voiceB.previous, voiceC.previous, voiceD.previous] = [lastA, lastB, lastC, lastD];
}
