import { type Dimension, type DimensionRules, MULTIPLIERS, RULES } from "./units.ts";

/**
 * Quantities as people write them: SI numbers, or text with a multiplier and unit ("250k", "0.022 µF"), the letter-for-point
 * codes of IEC 60062 ("4k7", "2n2"), and for capacitors the printed three-digit code ("223", "473K").
 */

export interface Quantity {
  /** In SI units: ohms, farads, henries, metres, farads per metre, hertz. */
  readonly value: number;
  /** A fraction, where the text carries a tolerance letter ("103K" is ±10 %). */
  readonly tolerance?: number;
}

/** Text that is no quantity; the message says what was expected. */
export class QuantityError extends Error {}

/** Tolerance letters of IEC 60062, as fractions. */
export const TOLERANCE_LETTERS: Readonly<Record<string, number>> = { F: 0.01, G: 0.02, J: 0.05, K: 0.1, M: 0.2 };
const NUMBER = String.raw`(\d+\.?\d*|\.\d+)(?:[eE]([+-]?\d{1,3}))?`;
const PLAIN = new RegExp(`^([+-]?)${NUMBER}\\s*(.*)$`, "su");
const LETTER_FOR_POINT = /^(\d*)(p|n|u|\u00b5|\u03bc|m|k|K|M|G|R|F|H)(\d+)\s*(.*)$/su;
const MAX_TEXT = 40;

/**
 * Reads a quantity.
 * @returns the value in SI units, and the tolerance where a printed code names one.
 * @throws QuantityError naming the text and what is expected.
 */
export function parseQuantity(input: number | string, dimension: Dimension): Quantity {
  const rules = RULES[dimension];
  if (typeof input === "number") {
    if (!Number.isFinite(input)) throw new QuantityError(`expected a finite number, such as ${rules.example}`);
    return { value: input };
  }
  const text = input.trim();
  if (text.length === 0 || text.length > MAX_TEXT) throw unreadable(text, rules);
  if (/\d,\d/.test(text)) {
    throw new QuantityError(`"${text}" has a decimal comma; write a decimal point: "${text.replace(",", ".")}"`);
  }
  const code = dimension === "capacitance" ? readCapacitorMarking(text) : undefined;
  return code ?? { value: readLetterForPoint(text, rules) ?? readPlain(text, rules) };
}

/** What is printed on a pot: a letter for the taper, then the track. */
const POT_PRINT = /^[ABCW]\s?(\d+(?:\.\d+)?)\s?([kKM])?$/;

function unreadable(text: string, rules: DimensionRules): QuantityError {
  const [, digits, multiplier = ""] = (rules === RULES.resistance && POT_PRINT.exec(text)) || [];
  if (digits !== undefined) {
    const track = `${digits}${multiplier.replace("K", "k")}`;
    return new QuantityError(
      `"${text}" has the taper's letter in front; write "${track}" and choose the taper by itself`,
    );
  }
  return new QuantityError(`"${text.slice(0, MAX_TEXT)}" cannot be read; expected a quantity such as ${rules.example}`);
}

interface Suffix {
  readonly powerOfTen: number;
  readonly unitScale: number;
}

function scaled(mantissa: string, exponent: number, unitScale: number): number {
  return Number(`${mantissa}e${exponent}`) * unitScale;
}

function readPlain(text: string, rules: DimensionRules): number {
  const match = PLAIN.exec(text);
  if (!match) throw unreadable(text, rules);
  const [, sign = "", mantissa = "", exponent = "0", rest = ""] = match;
  const suffix = readSuffix(rest, rules);
  if (suffix === undefined) throw unreadable(text, rules);
  const value = scaled(`${sign}${mantissa}`, Number(exponent) + suffix.powerOfTen, suffix.unitScale);
  if (!Number.isFinite(value)) throw unreadable(text, rules);
  return value;
}

/** "4k7" is 4.7 k, and "n47" 0.47 n: the letter stands where the point would. */
function readLetterForPoint(text: string, rules: DimensionRules): number | undefined {
  const match = LETTER_FOR_POINT.exec(text);
  if (!match) return undefined;
  const [, whole = "", letter = "", decimals, unit = ""] = match;
  if (whole === "" && letter !== "R" && !rules.multipliers.includes(letter)) return undefined;
  const mantissa = `${whole}.${decimals}`;
  if (letter in rules.units && unit === "") return scaled(mantissa, 0, rules.units[letter]!);
  if (!rules.multipliers.includes(letter)) return undefined;
  const suffix = readSuffix(`${letter}${unit}`, rules);
  return suffix === undefined ? undefined : scaled(mantissa, suffix.powerOfTen, suffix.unitScale);
}

function readSuffix(text: string, rules: DimensionRules): Suffix | undefined {
  for (const [unit, unitScale] of Object.entries(rules.units)) {
    if (!text.endsWith(unit)) continue;
    const multiplier = text.slice(0, text.length - unit.length).trim();
    if (rules.multipliers.includes(multiplier)) return { powerOfTen: MULTIPLIERS[multiplier] ?? 0, unitScale };
  }
  return undefined;
}

/** Three digits that are no printed code; an F behind them can then only be the unit. */
function noCode(text: string, number: string, letter: string): QuantityError {
  const instead = `write the unit, such as "${number}p" or "${number}n"`;
  return new QuantityError(
    letter === "F"
      ? `"${text}" would be ${Number(number)} farads, out of range for a guitar's capacitor; ${instead}`
      : `"${text}" is ambiguous for a capacitor; ${instead}`,
  );
}

/**
 * What is printed on a capacitor: "223" is 22 and three noughts of picofarads; "103K" adds a tolerance letter; a bare
 * decimal such as ".022" is in microfarads (common practice, no source).
 */
function readCapacitorMarking(text: string): Quantity | undefined {
  if (/^0+$/.test(text)) return { value: 0 };
  if (/^-\s*[\d.]/.test(text)) throw new QuantityError(`"${text}" is negative; expected more than 0, such as "22n"`);
  const code = /^(\d{2})(\d)([FGJKM]?)$/.exec(text);
  if (code) {
    const [, digits = "", zeros = "0", letter = ""] = code;
    if (Number(digits) < 10 || zeros === "0" || Number(zeros) > 6) throw noCode(text, `${digits}${zeros}`, letter);
    const value = scaled(digits, Number(zeros) - 12, 1);
    const tolerance = TOLERANCE_LETTERS[letter];
    return tolerance === undefined ? { value } : { value, tolerance };
  }
  if (/^\d*\.\d+$/.test(text)) return { value: scaled(text, -6, 1) };
  if (/^\d+$/.test(text)) {
    throw new QuantityError(`"${text}" is ambiguous for a capacitor; write the unit, such as "${text}n" or "${text}p"`);
  }
  return undefined;
}
