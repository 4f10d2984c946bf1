import type { CoilValues } from "../../response/coil-ladder.ts";

/** How a coil's loss is modelled: none, one resistor across the inductance, sections in the main branch, or one within a resistor. */
export const LOSS_MODELS = ["none", "resistor", "one-section", "section-and-resistor", "two-sections"] as const;
export type LossModel = (typeof LOSS_MODELS)[number];

/** A model of a coil as a list of positive parameters; fits work on their logarithms. */
export interface CoilShape {
  readonly loss: LossModel;
  readonly names: readonly string[];
  coilOf(parameters: ArrayLike<number>): CoilValues;
}

const SECTION_COUNTS: Readonly<Record<LossModel, number>> = {
  none: 0,
  resistor: 0,
  "one-section": 1,
  "section-and-resistor": 1,
  "two-sections": 2,
};
const CORE = ["resistance", "inductance", "capacitance"];

function sectionNames(count: number): string[] {
  return Array.from({ length: count }, (_, i) => [`loss.${i}.resistance`, `loss.${i}.inductance`]).flat();
}

function coilOf(loss: LossModel, parameters: ArrayLike<number>): CoilValues {
  const [resistance, inductance, capacitance] = [parameters[0]!, parameters[1]!, parameters[2]!];
  const core = { resistance, inductance, capacitance };
  if (loss === "none") return core;
  if (loss === "resistor") return { ...core, loss: parameters[3]! };
  const sections = Array.from({ length: SECTION_COUNTS[loss] }, (_, i) => ({
    resistance: parameters[3 + 2 * i]!,
    inductance: parameters[4 + 2 * i]!,
  }));
  if (loss !== "section-and-resistor") return { ...core, loss: sections };
  return { ...core, loss: [...sections, { resistance: parameters[5]! }] };
}

/** Under the names that the build file has for them. */
function lossNames(loss: LossModel): string[] {
  if (loss === "resistor") return ["loss"];
  const sections = sectionNames(SECTION_COUNTS[loss]);
  return loss === "section-and-resistor" ? [...sections, "loss.1.resistance"] : sections;
}

export function coilShape(loss: LossModel): CoilShape {
  const extra = lossNames(loss);
  return { loss, names: [...CORE, ...extra], coilOf: (parameters) => coilOf(loss, parameters) };
}

/** What a look at the data suggests. */
export interface Guess {
  readonly resistance: number;
  readonly inductance: number;
  readonly capacitance: number;
  /** The highest impedance seen, for the loss resistor. */
  readonly loss: number;
}

/** Corners R/(2πL) in Hz between which loss sections lie as a rule; tried one and two at a time. */
const SECTION_CORNERS_HZ = [400, 2000, 8000, 30_000];
const SECTION_SHARE = 0.15;

function cornerSets(count: number): number[][] {
  if (count === 0) return [[]];
  if (count === 1) return SECTION_CORNERS_HZ.map((corner) => [corner]);
  return SECTION_CORNERS_HZ.flatMap((low, i) => SECTION_CORNERS_HZ.slice(i + 1).map((high) => [low, high]));
}

/** Starting points for a fit, as lists of parameters. */
export function startsFor(loss: LossModel, guess: Guess): number[][] {
  const { resistance, inductance, capacitance } = guess;
  if (loss === "none") return [[resistance, inductance, capacitance]];
  if (loss === "resistor") return [[resistance, inductance, capacitance, 2 * guess.loss]];
  const count = SECTION_COUNTS[loss];
  return cornerSets(count).map((corners) => [
    resistance,
    inductance * (1 - count * SECTION_SHARE),
    capacitance,
    ...corners.flatMap((corner) => {
      const henries = inductance * SECTION_SHARE;
      return [2 * Math.PI * corner * henries, henries];
    }),
    ...(loss === "section-and-resistor" ? [4 * guess.loss] : []),
  ]);
}
