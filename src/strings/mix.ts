import { BLOCK } from "./timeline.ts";

type Block = Float64Array;

/** What four motions do in one coil. @param weights each motion's, for every coil */
function mixOne(mix: Block, motions: readonly Block[], weights: readonly Float64Array[], coil: number): void {
  const [motionA, motionB, motionC, motionD] = [motions[0]!, motions[1]!, motions[2]!, motions[3]!];
  const [weightA, weightB] = [weights[0]![coil]!, weights[1]![coil]!];
  const [weightC, weightD] = [weights[2]![coil]!, weights[3]![coil]!];
  for (let i = 0; i < BLOCK; i += 1) {
    mix[i] = mix[i]! + weightA * motionA[i]! + weightB * motionB[i]! + weightC * motionC[i]! + weightD * motionD[i]!;
  }
}

/** Adds four motions to what each coil gives. @param weights of each motion, one for every coil */
export function mixInto(mixes: readonly Block[], motions: readonly Block[], weights: readonly Float64Array[]): void {
  for (const [coil, mix] of mixes.entries()) mixOne(mix, motions, weights, coil);
}
