import { parseQuantity, QuantityError } from "../build-file/quantity.ts";
import { MAX_JSON_DEPTH } from "../limits.ts";

/** What of a part is only where it lies or how it is drawn. */
const LEFT_OUT = ["place", "turn", "body"];

const shortNumber = (value: number) => String(Number(value.toPrecision(4)));

/** The ways that a cap's value is written: "22n 22nf 0.022uf 22000pf". */
function capSpellings(farads: number): string[] {
  const [nano, micro, pico] = [1e9, 1e6, 1e12].map((scale) => shortNumber(farads * scale));
  return [`${nano}n`, `${nano}nf`, `${micro}uf`, `${pico}pf`];
}

/** "250k 250kohm". */
function ohmSpellings(ohms: number): string[] {
  const [kilo, mega] = [1e3, 1e6].map((scale) => shortNumber(ohms / scale));
  return ohms >= 1e6 ? [`${mega}m`] : ohms >= 1e3 ? [`${kilo}k`] : [`${shortNumber(ohms)}r`];
}

function spellings(key: string, value: string | number): string[] {
  try {
    if (/^(cap|capacitance|toneCap)$/.test(key)) return capSpellings(parseQuantity(value, "capacitance").value);
    if (/^(resistance|pot|volume|measured)$/.test(key)) return ohmSpellings(parseQuantity(value, "resistance").value);
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
  }
  return [];
}

function collect(value: unknown, key: string, into: Set<string>, depth = 0): void {
  if (depth > MAX_JSON_DEPTH) return;
  if (typeof value === "string" || typeof value === "number") {
    if (typeof value === "string") into.add(value);
    for (const each of spellings(key, value)) into.add(each);
  } else if (Array.isArray(value)) for (const each of value) collect(each, key, into, depth + 1);
  else if (typeof value === "object" && value !== null)
    for (const [inner, each] of Object.entries(value))
      if (!LEFT_OUT.includes(inner)) collect(each, inner, into, depth + 1);
}

/** What a search finds a build file's parts by: labels, types, kinds and values. Nothing of a file that is no JSON. */
export function partText(file: string): string {
  const words = new Set<string>();
  try {
    const { title, parts, plan } = JSON.parse(file) as Record<string, unknown>;
    for (const each of [title, parts, plan]) collect(each, "", words);
  } catch (error) {
    // A file with faults is kept all the same; it is found by what is written on it.
    if (!(error instanceof SyntaxError || error instanceof TypeError)) throw error;
  }
  return [...words].join(" ");
}
