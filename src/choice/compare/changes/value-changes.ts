import type { Part, Pickup } from "../../../build-file/schema.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { SWITCH_WORDS } from "../../../build-file/switch-words.ts";
import { readableName } from "../../../build-file/words/part-words.ts";

/** What does not change the sound. */
const SILENT_FIELDS = new Set(["label", "place", "body", "lugRows", "tolerance", "leads", "metal"]);
/** Values that differ by less were written in other units, not chosen anew. */
const SAME_VALUE = 1e-6;

function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === "number" && typeof b === "number")
    return Math.abs(a - b) <= SAME_VALUE * Math.max(Math.abs(a), Math.abs(b));
  return JSON.stringify(a) === JSON.stringify(b);
}

type Apart = [path: string, a: unknown, b: unknown];

/** More of one pickup are told as one. */
const MOST_VALUES = 2;

/** Fields in which two trees differ, each by its path; a value that one lacks is undefined. */
export function fieldsApart(a: object, b: object, path = ""): Apart[] {
  const [inA, inB] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return [...new Set([...Object.keys(inA), ...Object.keys(inB)])].flatMap((key): Apart[] => {
    if (SILENT_FIELDS.has(key)) return [];
    const [first, second] = [inA[key], inB[key]];
    if (isSame(first, second)) return [];
    const isTree = [first, second].every(
      (value) => typeof value === "object" && value !== null && !Array.isArray(value),
    );
    if (isTree) return fieldsApart(first as object, second as object, `${path}${key}.`);
    return [[`${path}${key}`, first, second]];
  });
}

const QUANTITIES = {
  resistance: "resistance",
  measured: "resistance",
  endResistance: "resistance",
  stopper: "resistance",
  capacitance: "capacitance",
  inductance: "inductance",
  distance: "length",
  length: "length",
} as const;

const TITLES: Readonly<Record<string, string>> = SWITCH_WORDS;

function valueWords(field: string, value: unknown): string | undefined {
  if (typeof value === "number" && field in QUANTITIES)
    return showQuantity(value, QUANTITIES[field as keyof typeof QUANTITIES]);
  if (typeof value === "string" || typeof value === "number")
    return TITLES[value] ?? String(value).replaceAll("-", " ");
  return undefined;
}

/** A field's name where the value alone would not say what it is. */
const SAID_WITH: Readonly<Record<string, string>> = {
  midpoint: " of the track at half turn",
  endResistance: " left at the end of the track",
  coupling: " coupling",
  output: " times the output",
  winding: " winding",
  magnet: " to the strings",
  distance: " from the bridge",
  inductance: " of inductance",
  lossFactor: " loss factor",
};

/** "500 kΩ instead of 250 kΩ", "a no-load track". */
function fieldWords(path: string, from: unknown, to: unknown): string {
  const field = path.split(".").at(-1)!;
  if (field === "noLoad") return to === true ? "a no-load track" : "a track that stays connected";
  const [first, second] = [valueWords(field, from), valueWords(field, to)];
  if (field === "taper" && first !== undefined && second !== undefined)
    return `${/^[aeiou]/.test(second) ? "an" : "a"} ${second} taper instead of ${first}`;
  if (first !== undefined && second !== undefined) return `${second}${SAID_WITH[field] ?? ""} instead of ${first}`;
  return `another ${readableName(field === "drives" ? "switch on the shaft" : field)}`;
}

/** What a pickup is: "humbucker, hot wind", as its label says after its place. */
function titleOf({ label, type }: Pickup): string | undefined {
  const [, title] = (label ?? "").split(": ");
  return title ?? type?.replaceAll("-", " ");
}

/** Of two titles what they do not share: "hot wind instead of medium wind". */
function typeWords(from: Pickup, to: Pickup): string {
  const [first, second] = [titleOf(from), titleOf(to)];
  if (first === undefined || second === undefined) return "another pickup";
  const [inFirst, inSecond] = [first.split(", "), second.split(", ")];
  const own = inSecond.filter((part) => !inFirst.includes(part));
  const gone = inFirst.filter((part) => !inSecond.includes(part));
  return own.length > 0 && gone.length > 0 && inFirst[0] === inSecond[0]
    ? `${own.join(", ")} instead of ${gone.join(", ")}`
    : `${second} instead of ${first}`;
}

/** Metal takes of a coil's EMF and of its inductance: where both differ it is one thing to a person. */
function coilWords(fields: readonly Apart[]): string[] {
  if (fields.some(([path]) => path.endsWith("shielding"))) return ["other metal"];
  const words = [...new Set(fields.map((field) => fieldWords(...field)))];
  return words.length > MOST_VALUES ? ["other values"] : words;
}

function pickupChanges(a: Pickup, b: Pickup): string[] {
  const fields = fieldsApart(a, b);
  // A type's name stands for all its values; of one that only lost its name they are told one by one.
  const isOther = fields.some(([path]) => path === "type") && titleOf(a) !== titleOf(b);
  return isOther ? [typeWords(a, b)] : coilWords(fields.filter(([path]) => path !== "type"));
}

/** The values in which one part differs from another of its kind, in words, each once. */
export function valueChanges(a: Part, b: Part): string[] {
  if (a.kind !== b.kind) return ["another part"];
  if (a.kind === "pickup" && b.kind === "pickup") return pickupChanges(a, b);
  return [...new Set(fieldsApart(a, b).map((field) => fieldWords(...field)))];
}

/** What a part is known by when it comes or goes: "150 kΩ". */
export function mainValue(part: Part): string | undefined {
  if (part.kind === "cap") return showQuantity(part.capacitance, "capacitance");
  return part.kind === "resistor" || part.kind === "pot" ? showQuantity(part.resistance, "resistance") : undefined;
}
