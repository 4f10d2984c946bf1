import { TOLERANCE_LETTERS } from "../../build-file/quantity.ts";
import { shortQuantity } from "../../build-file/show-quantity.ts";
import type { Tolerance } from "../../build-file/tolerances.ts";

/**
 * The three-digit code printed on a capacitor: two digits and the count of noughts, in picofarads (223 is 22 nF).
 * @returns null where the value has more than two digits or lies outside what the code is used for
 */
export function capacitorCode(farads: number): string | null {
  const pico = farads * 1e12;
  const zeros = Math.floor(Math.log10(pico * (1 + 1e-9))) - 1;
  if (zeros < 1 || zeros > 6) return null;
  const digits = Math.round(pico / 10 ** zeros);
  const exact = Math.abs(digits * 10 ** zeros - pico) < 1e-6 * pico;
  return exact && digits >= 10 && digits <= 99 ? `${digits}${zeros}` : null;
}

/** The letter printed on a capacitor for its tolerance, IEC 60062; null where there is none. */
export function toleranceLetter({ fraction, under }: Pick<Tolerance, "fraction" | "under">): string | null {
  if (under !== undefined) return under === -0.2 && fraction === 0.8 ? "Z" : null;
  return Object.entries(TOLERANCE_LETTERS).find(([, value]) => Math.abs(value - fraction) < 1e-9)?.[0] ?? null;
}

/** Taper letters in today's trade use; older and some other makers print A for linear and B for audio. Common practice. */
const TAPER_LETTERS: Readonly<Record<string, string>> = { audio: "A", linear: "B", "reverse-audio": "C" };

export const TAPER_NOTE =
  "A is audio, B linear, C reverse audio in today's trade use; makers differ, and some print A for linear: measure at half turn.";

/** What is printed on a pot: "A250K". A table of points has no letter. */
export function potCode(ohms: number, taper: string | readonly unknown[]): string | null {
  const letter = typeof taper === "string" ? TAPER_LETTERS[taper] : undefined;
  return letter === undefined ? null : `${letter}${shortQuantity(ohms).replace("k", "K")}`;
}

const BAND_COLOURS = ["black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"] as const;
const TOLERANCE_BANDS: readonly (readonly [number, string])[] = [
  [0.01, "brown"],
  [0.02, "red"],
  [0.05, "gold"],
  [0.1, "silver"],
];

/** Colour bands of a resistor with two digits, IEC 60062; null where two digits do not hold the value. */
export function resistorBands(ohms: number, tolerance: number): string | null {
  const zeros = Math.floor(Math.log10(ohms * (1 + 1e-9))) - 1;
  const digits = Math.round(ohms / 10 ** zeros);
  const band = TOLERANCE_BANDS.find(([value]) => Math.abs(value - tolerance) < 1e-9)?.[1];
  if (zeros < 0 || zeros > 9 || band === undefined || Math.abs(digits * 10 ** zeros - ohms) > 1e-6 * ohms) return null;
  return [Math.floor(digits / 10), digits % 10, zeros]
    .map((digit) => BAND_COLOURS[digit])
    .concat(band as never)
    .join("-");
}
