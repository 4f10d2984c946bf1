import { type BridgedSection, type CoilLadder, type CoilValues, coilLadder } from "../../response/coil-ladder.ts";

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

function bridged({ inductance: henries, resistance: ohms }: BridgedSection, omega: number): Complex {
  const x = omega * henries;
  const scale = (ohms * x) / (ohms * ohms + x * x);
  return { re: scale * x, im: scale * ohms };
}

/** A fit asks for one coil at thousands of frequencies. */
const ladders = new WeakMap<CoilValues, CoilLadder>();

function ladderOf(coil: CoilValues): CoilLadder {
  const known = ladders.get(coil);
  if (known) return known;
  const ladder = coilLadder(coil);
  ladders.set(coil, ladder);
  return ladder;
}

/** Impedance of the ladder that carries the EMF, without the winding capacitance. */
function mainBranch(coil: CoilValues, omega: number): Complex {
  const { resistance, inductance, sections, across } = ladderOf(coil);
  let re = 0;
  let im = omega * inductance;
  for (const section of sections) {
    const part = bridged(section, omega);
    re += part.re;
    im += part.im;
  }
  if (across === undefined) return { re: resistance + re, im };
  const norm = (across + re) ** 2 + im ** 2;
  return {
    re: resistance + (across * (re * (across + re) + im ** 2)) / norm,
    im: (across ** 2 * im) / norm,
  };
}

function conductance(across: Across | undefined): number {
  return across && Number.isFinite(across.resistance) ? 1 / across.resistance : 0;
}

/** The main branch Z, and 1 + Z·(G + jωC) with what hangs across the leads: their quotient is the impedance between them. */
function divider(coil: CoilValues, frequencyHz: number, across: Across | undefined) {
  const omega = 2 * Math.PI * frequencyHz;
  const main = mainBranch(coil, omega);
  const b = omega * (coil.capacitance + (across?.capacitance ?? 0));
  const g = conductance(across);
  return { main, re: 1 + main.re * g - main.im * b, im: main.re * b + main.im * g };
}

/** Impedance between the coil's leads, with what is known to hang across them: Z = 1/(1/Zmain + G + jωC). */
export function coilImpedance(coil: CoilValues, frequencyHz: number, across?: Across): Complex {
  const { main, re, im } = divider(coil, frequencyHz, across);
  const norm = re * re + im * im;
  return { re: (main.re * re + main.im * im) / norm, im: (main.im * re - main.re * im) / norm };
}

/** Voltage across the coil's leads for a unit EMF, with what hangs across them: 1/(1 + Zmain·(G + jωC)). */
export function coilTransfer(coil: CoilValues, frequencyHz: number, across?: Across): Complex {
  const { re, im } = divider(coil, frequencyHz, across);
  const norm = re * re + im * im;
  return { re: re / norm, im: -im / norm };
}
