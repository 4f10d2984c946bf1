import { METRES_PER_FOOT, METRES_PER_INCH } from "../lengths.ts";

export type Dimension =
  | "resistance"
  | "capacitance"
  | "inductance"
  | "length"
  | "capacitancePerLength"
  | "resistancePerLength"
  | "frequency";

/** Powers of ten, so that "22n", "0.022u" and "22000p" read to the very same number. */
export const MULTIPLIERS: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  "\u00b5": -6,
  "\u03bc": -6,
  m: -3,
  // As printed on older capacitors: m for micro, mm for micro-micro.
  mfd: -6,
  MFD: -6,
  mmfd: -12,
  MMFD: -12,
  "": 0,
  k: 3,
  K: 3,
  M: 6,
  meg: 6,
  Meg: 6,
  G: 9,
};

export interface DimensionRules {
  readonly example: string;
  /** Unit spellings and what one of them is in the SI unit. */
  readonly units: Readonly<Record<string, number>>;
  /** Multipliers that make sense here; a capital M on a capacitor would be read both as mega and as micro. */
  readonly multipliers: readonly string[];
}

const LARGE = ["", "k", "K", "M", "meg", "Meg", "G"];
const MICRO = ["u", "\u00b5", "\u03bc"];
const SMALL = ["p", "n", ...MICRO, "m", ""];
const OLD_CAPACITOR_MARKINGS = ["mfd", "MFD", "mmfd", "MMFD"];

export const RULES: Readonly<Record<Dimension, DimensionRules>> = {
  resistance: {
    example: '"250k", "4k7" or 250000',
    units: { "": 1, R: 1, "\u03a9": 1, "\u2126": 1, ohm: 1, ohms: 1, Ohm: 1, Ohms: 1 },
    multipliers: [...LARGE, "m"],
  },
  capacitance: {
    example: '"22n", "0.022uF" or "223"',
    units: { "": 1, F: 1, f: 1 },
    multipliers: [...SMALL, ...OLD_CAPACITOR_MARKINGS],
  },
  inductance: { example: '"2.4H" or 2.4', units: { "": 1, H: 1, h: 1 }, multipliers: [...MICRO, "m", ""] },
  length: {
    example: '"0.648m", "12mm" or "25.5in"',
    units: {
      "": 1,
      m: 1,
      cm: 0.01,
      mm: 0.001,
      in: METRES_PER_INCH,
      inch: METRES_PER_INCH,
      inches: METRES_PER_INCH,
      '"': METRES_PER_INCH,
      ft: METRES_PER_FOOT,
      foot: METRES_PER_FOOT,
      feet: METRES_PER_FOOT,
      "'": METRES_PER_FOOT,
    },
    multipliers: [""],
  },
  capacitancePerLength: {
    example: '"100p" (a metre), "100pF/m" or "33pF/ft"',
    units: { "": 1, F: 1, "F/m": 1, "/m": 1, "F/ft": 1 / METRES_PER_FOOT, "/ft": 1 / METRES_PER_FOOT },
    multipliers: SMALL,
  },
  resistancePerLength: {
    example: '"33m" (a metre) or "33mΩ/m"',
    units: { "": 1, "\u03a9/m": 1, "\u2126/m": 1, "R/m": 1, "ohm/m": 1, "/m": 1 },
    multipliers: ["m", ""],
  },
  frequency: { example: '"4.5kHz" or 4500', units: { "": 1, Hz: 1, hz: 1 }, multipliers: ["", "k", "K"] },
};
