import type { Coil } from "../../build-file/schema.ts";

/** The electrical values of a coil, as the build file has them. */
export type CoilValues = Pick<Coil, "resistance" | "inductance" | "capacitance" | "loss">;

/** What hangs across the coil while it is measured. */
export interface Across {
  /** Ohms; Infinity for nothing. */
  readonly resistance: number;
  readonly capacitance: number;
}

export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** An inductance bridged by a resistance. */
function bridged(henries: number, ohms: number, omega: number): Complex {
  const x = omega * henries;
  const scale = (ohms * x) / (ohms * ohms + x * x);
  return { re: scale * x, im: scale * ohms };
}

/** The branch that carries the EMF: resistance, inductance and loss in series, without the winding capacitance. */
function mainBranch({ resistance, inductance, loss }: CoilValues, omega: number): Complex {
  if (typeof loss === "number") {
    const { re, im } = bridged(inductance, loss, omega);
    return { re: resistance + re, im };
  }
  let re = resistance;
  let im = omega * inductance;
  for (const section of loss ?? []) {
    const part = bridged(section.inductance, section.resistance, omega);
    re += part.re;
    im += part.im;
  }
  return { re, im };
}

function conductance(across: Across | undefined): number {
  return across && Number.isFinite(across.resistance) ? 1 / across.resistance : 0;
}

/** Impedance between the coil's leads, with what is known to hang across them: Z = 1/(1/Zmain + G + jωC). */
export function coilImpedance(coil: CoilValues, frequencyHz: number, across?: Across): Complex {
  const omega = 2 * Math.PI * frequencyHz;
  const main = mainBranch(coil, omega);
  const b = omega * (coil.capacitance + (across?.capacitance ?? 0));
  const g = conductance(across);
  // main / (1 + main·(g + jb))
  const dRe = 1 + main.re * g - main.im * b;
  const dIm = main.re * b + main.im * g;
  const norm = dRe * dRe + dIm * dIm;
  return { re: (main.re * dRe + main.im * dIm) / norm, im: (main.im * dRe - main.re * dIm) / norm };
}

/** Voltage across the coil's leads for a unit EMF, with what hangs across them: 1/(1 + Zmain·(G + jωC)). */
export function coilTransfer(coil: CoilValues, frequencyHz: number, across?: Across): Complex {
  const omega = 2 * Math.PI * frequencyHz;
  const main = mainBranch(coil, omega);
  const b = omega * (coil.capacitance + (across?.capacitance ?? 0));
  const g = conductance(across);
  const dRe = 1 + main.re * g - main.im * b;
  const dIm = main.re * b + main.im * g;
  const norm = dRe * dRe + dIm * dIm;
  return { re: dRe / norm, im: -dIm / norm };
}
