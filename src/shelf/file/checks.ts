/** What is wrong with a value, under the place where it stands: "readings.0.date". */
export class CheckError extends Error {
  readonly path: string;

  constructor(path: string, message: string) {
    super(message);
    this.path = path;
  }
}

/** Reads a value or throws a `CheckError` with what was expected of it. */
export type Check<T> = (value: unknown, path: string) => T;

const MAX_SHOWN = 40;

function shown(value: unknown): string {
  if (value === undefined) return "is missing";
  if (Array.isArray(value)) return "is a list";
  if (typeof value === "object" && value !== null) return "is an object";
  const text = JSON.stringify(value);
  return `is ${text.length > MAX_SHOWN ? `${text.slice(0, MAX_SHOWN)}…` : text}`;
}

export function refuse(value: unknown, path: string, expected: string): never {
  throw new CheckError(path, `${shown(value)}; expected ${expected}`);
}

export function textUpTo(most: number): Check<string> {
  return (value, path) => {
    if (typeof value !== "string") return refuse(value, path, "text");
    if (value.length > most) throw new CheckError(path, `has ${value.length} characters; expected at most ${most}`);
    return value;
  };
}

export function textLike(pattern: RegExp, expected: string): Check<string> {
  return (value, path) =>
    typeof value === "string" && pattern.test(value) ? value : refuse(value, path, `${expected}`);
}

export function oneOf<const T extends string>(values: readonly T[]): Check<T> {
  return (value, path) =>
    values.find((each) => each === value) ??
    refuse(value, path, `one of ${values.map((each) => `"${each}"`).join(", ")}`);
}

export function listOf<T>(check: Check<T>, most: number): Check<readonly T[]> {
  return (value, path) => {
    if (!Array.isArray(value)) return refuse(value, path, "a list");
    if (value.length > most) throw new CheckError(path, `has ${value.length} entries; expected at most ${most}`);
    return value.map((each, index) => check(each, `${path}.${index}`));
  };
}

type Fields = Readonly<Record<string, Check<unknown>>>;
type Shape<F extends Fields> = { readonly [K in keyof F]: ReturnType<F[K]> };

function asObject(value: unknown, path: string, known: readonly string[]): Readonly<Record<string, unknown>> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return refuse(value, path, "an object");
  const stranger = Object.keys(value).find((key) => !known.includes(key));
  if (stranger !== undefined)
    throw new CheckError(
      path === "" ? stranger.slice(0, MAX_SHOWN) : `${path}.${stranger.slice(0, MAX_SHOWN)}`,
      `is not known; expected only ${known.join(", ")}`,
    );
  return value as Readonly<Record<string, unknown>>;
}

const at = (path: string, key: string) => (path === "" ? key : `${path}.${key}`);

/** An object with all these fields and no others, in this order. */
export function objectOf<F extends Fields>(fields: F): Check<Shape<F>> {
  const keys = Object.keys(fields);
  return (value, path) => {
    const given = asObject(value, path, keys);
    return Object.fromEntries(keys.map((key) => [key, fields[key]!(given[key], at(path, key))])) as Shape<F>;
  };
}

/** An object with some of these fields and no others. */
export function someOf<F extends Fields>(fields: F): Check<Partial<Shape<F>>> {
  const keys = Object.keys(fields);
  return (value, path) => {
    const given = asObject(value, path, keys);
    const there = keys.filter((key) => given[key] !== undefined);
    return Object.fromEntries(there.map((key) => [key, fields[key]!(given[key], at(path, key))])) as Partial<Shape<F>>;
  };
}

/** An object whose every field is of one kind, whatever it is called. */
export function recordOf<T>(check: Check<T>): Check<Readonly<Record<string, T>>> {
  return (value, path) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return refuse(value, path, "an object");
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, check(each, at(path, key))]));
  };
}
