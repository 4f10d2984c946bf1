/** Right but for one place, where far too much stands: as large as a body may be. */
export interface SwollenBody {
  readonly title: string;
  /** Made when it is wanted: all of them would fill the memory. */
  readonly text: () => string;
}

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

/** Of the first entries of a list; the others are alike. */
const FIRST = 2;

function pathsOf(value: Json, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const keys = Array.isArray(value) ? [...value.slice(0, FIRST).keys()] : Object.keys(value);
  return [path, ...keys.flatMap((key) => pathsOf((value as Record<string | number, Json>)[key]!, [...path, key]))];
}

const at = (value: Json, path: Path) =>
  path.reduce((each, key) => (each as Record<string | number, Json>)[key]!, value);

/** The body's text with another text in one place. */
function withText(value: Json, path: Path, text: string): string {
  if (path.length === 0) return text;
  const mark = "\u0001here\u0001";
  const copy = structuredClone(value);
  (at(copy, path.slice(0, -1)) as Record<string | number, Json>)[path.at(-1)!] = mark;
  return JSON.stringify(copy).replace(JSON.stringify(mark), () => text);
}

const listOf = (entry: Json, chars: number) => {
  const text = JSON.stringify(entry);
  return `[${Array(Math.max(1, Math.floor(chars / (text.length + 1))))
    .fill(text)
    .join()}]`;
};

function withKeys(was: Json, entry: Json, chars: number): string {
  const text = JSON.stringify(entry);
  const added = Array.from({ length: Math.floor(chars / (text.length + 11)) }, (_, index) => `"k${index}":${text}`);
  const isObject = typeof was === "object" && was !== null && !Array.isArray(was);
  return `{${[...(isObject ? [JSON.stringify(was).slice(1, -1)] : []), ...added].filter(Boolean).join()}}`;
}

const firstIn = (was: Json): Json =>
  typeof was === "object" && was !== null && Object.keys(was).length > 0 ? Object.values(was)[0]! : was;

const SWELLINGS: readonly (readonly [title: string, swell: (was: Json, chars: number) => string])[] = [
  ["a list of the same", (was, chars) => listOf(firstIn(was), chars)],
  ["a list of empty objects", (_, chars) => listOf({}, chars)],
  ["a list of lists", (_, chars) => listOf([1], chars)],
  ["a list of texts", (_, chars) => listOf("x", chars)],
  ["more keys with the same", (was, chars) => withKeys(was, firstIn(was), chars)],
  ["more keys with a number", (was, chars) => withKeys(was, 1, chars)],
  ["more keys with empty objects", (was, chars) => withKeys(was, {}, chars)],
  ["a text", (_, chars) => `"${"a".repeat(chars)}"`],
  ["digits as a text", (_, chars) => `"${"1".repeat(chars)}"`],
  ["words", (_, chars) => `"${"a 1, ".repeat(chars / 5)}"`],
];

/** Every way of swelling a right body in every place. @param chars how much is put there */
export function swollenBodies(right: unknown, chars: number): SwollenBody[] {
  const body = JSON.parse(JSON.stringify(right)) as Json;
  return pathsOf(body).flatMap((path) =>
    SWELLINGS.map(([title, swell]) => ({
      title: `${path.join(".") || "the body"} as ${title}`,
      text: () => withText(body, path, swell(at(body, path), chars)),
    })),
  );
}
