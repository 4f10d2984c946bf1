import { type Across, coilTransfer } from "../../choice/fit/coil-model.ts";
import { coilShape } from "../../choice/fit/coil-shapes.ts";
import type { Fit } from "../../choice/fit/fit-problem.ts";
import { symmetricEigen } from "../../choice/fit/symmetric-eigen.ts";
import type { CoilValues } from "../../response/coil-ladder.ts";

/** A coil's values, and how far they are trusted. */
export interface KnownCoil {
  readonly coil: CoilValues;
  /** What hangs across it while it is recorded. */
  readonly across: Across;
  /** The coil moved by one standard deviation, each along a direction of its own. */
  readonly offs: readonly CoilValues[];
}

/** A loss is read off a resonance's height, and so some times worse than the rest; a judgement, no source. */
const LOSS_IS_WORSE = 5;

type Loss = CoilValues["loss"];

function withLoss(loss: Loss, factor: number): Loss {
  if (loss === undefined || typeof loss === "number") return loss && loss * factor;
  return loss.map((section) => ({ ...section, resistance: section.resistance * factor }));
}

/** All of a coil's inductance in one proportion. */
function withInductance({ loss, ...coil }: CoilValues, factor: number): CoilValues {
  const inductance = coil.inductance * factor;
  if (!Array.isArray(loss)) return { ...coil, inductance, loss };
  const sections = loss.map((part) =>
    part.inductance === undefined ? part : { ...part, inductance: part.inductance * factor },
  );
  return { ...coil, inductance, loss: sections };
}

/** @param precision relative standard deviation of inductance, resistance and the capacitance across it, the input's with it */
export function coilWithin(coil: CoilValues, across: Across, precision: number): KnownCoil {
  const offs: CoilValues[] = [
    withInductance(coil, 1 + precision),
    { ...coil, capacitance: coil.capacitance + precision * (coil.capacitance + across.capacitance) },
    { ...coil, resistance: coil.resistance * (1 + precision) },
    ...(coil.loss === undefined ? [] : [{ ...coil, loss: withLoss(coil.loss, 1 + LOSS_IS_WORSE * precision) }]),
  ];
  return { coil, across, offs };
}

/** A fitted coil: its values' errors go together, so that each direction is one of their covariance's own. */
export function coilOfFit({ loss, coil, values, covariance }: Fit, across: Across): KnownCoil {
  const { coilOf } = coilShape(loss);
  const size = values.length;
  const { values: variances, vectors } = symmetricEigen(Float64Array.from(covariance.flat()), size);
  const offs = Array.from(variances, (variance, k) => {
    const reach = Math.sqrt(Math.max(0, variance));
    return coilOf(values.map(({ value }, i) => value * Math.exp(reach * vectors[i * size + k]!)));
  });
  return { coil, across, offs };
}

/** How far a coil and what hangs across it leave its voltage above its EMF, in nepers, at each frequency. */
function gain(coil: CoilValues, across: Across, frequenciesHz: readonly number[]): number[] {
  return frequenciesHz.map((hz) => {
    const { re, im } = coilTransfer(coil, hz, across);
    return Math.log(Math.hypot(re, im));
  });
}

/** The coil's own gain, and how each direction in which its values may be off moves it. */
export function gainsOf({ coil, across, offs }: KnownCoil, frequenciesHz: readonly number[]) {
  const own = gain(coil, across, frequenciesHz);
  const moves = offs.map((off) => gain(off, across, frequenciesHz).map((each, i) => each - own[i]!));
  return { own, moves };
}
