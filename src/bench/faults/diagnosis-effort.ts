import type { MeterModel } from "../meter/meter-model.ts";
import { NOT_SWEPT } from "../meter/ohmmeter.ts";
import { BUDGET } from "../solving-effort.ts";
import type { Question } from "./likelihood/predictor.ts";

/** What a reading costs beside the elimination: joining nets, numbering nodes, and looking what the pots' ends make of it. */
const PER_READING = 4500;
const SWEEP_READINGS = 8;

/** Multiplications of one ohmmeter reading. */
function readingCost({ parts: { resistors } }: MeterModel): number {
  const nodes = new Set(resistors.flatMap(({ a, b }) => [a, b])).size;
  return PER_READING + nodes ** 3 / 3;
}

/** How many faults can be weighed in about a second, given how large the network and how many the readings are. */
export function affordableFaults(model: MeterModel, questions: readonly Question[]): number {
  const { parameters, tracks } = model.parts;
  const readings = questions.reduce(
    (sum, { probes }) => sum + (probes.sweptTrack === NOT_SWEPT ? 1 : SWEEP_READINGS),
    1,
  );
  const unknowns = parameters.length + tracks.length;
  const each = readings * (readingCost(model) + unknowns ** 2) + unknowns ** 3;
  return Math.max(1, Math.floor(BUDGET / each));
}

/** How many single readings can be predicted in about a second. */
export function affordableReadings(model: MeterModel): number {
  return Math.floor(BUDGET / readingCost(model));
}
