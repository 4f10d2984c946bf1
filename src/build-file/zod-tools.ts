import * as z from "zod";
import { type InputFault, refused } from "../errors.ts";
import { MAX_FAULTS_TOLD } from "../limits.ts";
import { issueWords, shortened, shown } from "./issue-words.ts";
import { nearestWord, suggestion } from "./nearest.ts";
import { parseQuantity, type Quantity, QuantityError } from "./quantity.ts";
import type { Dimension } from "./units.ts";

/** Whoever has more keys wrong mends these first. */
const MAX_KEYS_TOLD = 5;

function unknownKeys(keys: readonly string[], known: readonly string[]): string {
  const told = keys.slice(0, MAX_KEYS_TOLD).map((key) => `unknown key "${shortened(key)}"${suggestion(key, known)}`);
  const more = keys.length - told.length;
  return [...told, ...(more > 0 ? [`and ${more} more`] : [])].join("; ");
}

/** An object that refuses unknown keys by name and suggests the nearest known one. */
export function strict<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const known = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) => (issue.code === "unrecognized_keys" ? unknownKeys(issue.keys, known) : undefined),
  });
}

interface Bounds {
  readonly min?: number;
  /** The value must be above this. */
  readonly above?: number;
  readonly max: number;
}

const UNIT_NAMES: Readonly<Record<Dimension, string>> = {
  resistance: "ohms",
  capacitance: "farads",
  inductance: "henries",
  length: "metres",
  capacitancePerLength: "farads per metre",
  resistancePerLength: "ohms per metre",
  frequency: "hertz",
};

function boundsMessage(value: number, dimension: Dimension, bounds: Bounds): string | undefined {
  const unit = UNIT_NAMES[dimension];
  if (bounds.above !== undefined && !(value > bounds.above))
    return `is ${value} ${unit}; expected more than ${bounds.above}`;
  if (bounds.min !== undefined && value < bounds.min) return `is ${value} ${unit}; expected at least ${bounds.min}`;
  return value > bounds.max ? `is ${value} ${unit}; expected at most ${bounds.max}` : undefined;
}

function numberOrText(dimension: Dimension, meaning: string) {
  return z
    .union([z.number(), z.string()], {
      error: () => `expected a number or text such as "22n" (${UNIT_NAMES[dimension]})`,
    })
    .describe(`${meaning} (${UNIT_NAMES[dimension]}, or text with a unit)`);
}

/** The quantity, or what is wrong with it. */
function readWithin(input: number | string, dimension: Dimension, bounds: Bounds): Quantity | string {
  try {
    const quantity = parseQuantity(input, dimension);
    const message = boundsMessage(quantity.value, dimension, bounds);
    return message === undefined ? quantity : `"${input}" ${message}`;
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

/** A quantity within bounds, read to its SI number; a printed code's tolerance comes along. */
export function quantityWithTolerance(dimension: Dimension, bounds: Bounds, meaning: string) {
  return numberOrText(dimension, meaning).transform((input, context) => {
    const read = readWithin(input, dimension, bounds);
    if (typeof read !== "string") return read;
    context.addIssue({ code: "custom", message: read });
    return z.NEVER;
  });
}

export function quantity(dimension: Dimension, bounds: Bounds, meaning: string) {
  return quantityWithTolerance(dimension, bounds, meaning).transform((read) => read.value);
}

/** A quantity within bounds that stays as it was written, for a form that is to be read again later. */
export function writtenQuantity(dimension: Dimension, bounds: Bounds, meaning: string) {
  return numberOrText(dimension, meaning).superRefine((input, context) => {
    const read = readWithin(input, dimension, bounds);
    if (typeof read === "string") context.addIssue({ code: "custom", message: read });
  });
}

/** One word of a list; another word is refused with the nearest of the list. */
export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, {
    error: (issue) => {
      const near = typeof issue.input === "string" ? nearestWord(issue.input, words) : undefined;
      const hint = near === undefined ? "" : `; did you mean "${near}"?`;
      const written = typeof issue.input === "string" ? shortened(issue.input) : shown(issue.input);
      return `${issue.input === undefined ? "nothing" : written} is none of ${words.map((word) => `"${word}"`).join(", ")}${hint}`;
    },
  });
}

interface FoundFault {
  readonly path: readonly PropertyKey[];
  readonly message: string;
}

/** What zod says of a union whose schema has no words of its own. */
const NO_WORDS = "Invalid input";

function isListSize(issue: z.core.$ZodIssue): boolean {
  return (issue.code === "too_big" || issue.code === "too_small") && issue.origin === "array";
}

/**
 * The branch of a union that the input was meant for: the one that got deepest before failing, and of those the one with the
 * fewest faults. Where none got into the input, the union's own words say what was expected.
 */
function unionFaults(issue: z.core.$ZodIssueInvalidUnion, path: readonly PropertyKey[]): FoundFault[] {
  const branches = issue.errors.map((branch) =>
    branch.slice(0, MAX_FAULTS_TOLD).flatMap((inner) => deepestFaults(inner, path)),
  );
  const depth = (faults: FoundFault[]) => faults.reduce((most, { path }) => Math.max(most, path.length), 0);
  const better = (a: FoundFault[], b: FoundFault[]) =>
    depth(b) > depth(a) || (depth(b) === depth(a) && b.length < a.length) ? b : a;
  const best = branches.reduce(better);
  if (depth(best) > path.length) return best;
  // A list was meant, and only its length is wrong.
  const size = issue.errors.flat().find((inner) => inner.path.length === 0 && isListSize(inner));
  if (size !== undefined) return [{ path, message: size.message }];
  return issue.message === NO_WORDS ? best : [{ path, message: issue.message }];
}

function deepestFaults(issue: z.core.$ZodIssue, prefix: readonly PropertyKey[]): FoundFault[] {
  const path = [...prefix, ...issue.path];
  if (issue.code === "invalid_union" && issue.errors.length > 0) return unionFaults(issue, path);
  // A key that nobody expected is the field at fault itself.
  if (issue.code === "unrecognized_keys" && issue.keys.length === 1) path.push(issue.keys[0]!);
  const message = issue.code === "invalid_key" ? (issue.issues[0]?.message ?? issue.message) : issue.message;
  return [{ path, message }];
}

/** Zod's findings as faults with dotted paths, of very many the first. */
export function faultsOf(error: z.core.$ZodError, prefix: readonly string[] = []): InputFault[] {
  return error.issues
    .slice(0, MAX_FAULTS_TOLD)
    .flatMap((issue) => deepestFaults(issue, prefix))
    .map(({ path, message }) => ({ path: path.map(String).join("."), message }));
}

/** As `safeParse`, every fault with what was found and expected. */
export function parsed<Schema extends z.ZodType>(schema: Schema, input: unknown) {
  return schema.safeParse(input, { error: issueWords });
}

/** Parses at the door. @throws PresolderError with one fault for every field at fault. */
export function parseOrThrow<Schema extends z.ZodType>(
  schema: Schema,
  input: unknown,
  code: "BUILD_INVALID" | "REQUEST_INVALID",
  prefix: readonly string[] = [],
): z.infer<Schema> {
  const result = parsed(schema, input);
  if (result.success) return result.data;
  throw refused(code, faultsOf(result.error, prefix));
}
