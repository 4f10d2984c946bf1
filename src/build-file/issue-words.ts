import type * as z from "zod";

type RawIssue = z.core.$ZodRawIssue;

const MAX_SHOWN_CHARS = 40;

const KINDS: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "text",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
};

const kind = (name: string) => KINDS[name] ?? name;

export const shortened = (text: string) =>
  text.length > MAX_SHOWN_CHARS ? `${text.slice(0, MAX_SHOWN_CHARS)}…` : text;

/** Its beginning, in more signs than are shown: each entry has at least one. */
function first(value: unknown, left = { entries: MAX_SHOWN_CHARS + 1 }): unknown {
  left.entries--;
  if (typeof value === "string") return value.slice(0, MAX_SHOWN_CHARS + 1);
  if (typeof value !== "object" || value === null) return value;
  const keys = Array.isArray(value) ? value.keys() : Object.keys(value);
  const list: [string | number, unknown][] = [];
  for (const key of keys) {
    if (left.entries <= 0) break;
    list.push([key, first((value as Record<string | number, unknown>)[key], left)]);
  }
  return Array.isArray(value) ? list.map(([, entry]) => entry) : Object.fromEntries(list);
}

/** A value as it was sent, cut where it is long. */
export function shown(value: unknown): string {
  const text = typeof value === "number" ? String(value) : (JSON.stringify(first(value)) ?? typeof value);
  return shortened(text);
}

/** What a bound is held against: a number itself, or how long a text or a list is. */
function measured(input: unknown, unit: string): string {
  if (typeof input === "string") return `has ${input.length} characters`;
  return Array.isArray(input) ? `has ${input.length} ${unit}` : `is ${shown(input)}`;
}

/** What was found and expected, for the schemas that have no words of their own; undefined leaves it to zod. */
export function issueWords(issue: RawIssue): string | undefined {
  const { input } = issue;
  switch (issue.code) {
    case "invalid_type":
      return `${input === undefined ? "is missing" : `is ${shown(input)}`}; expected ${kind(issue.expected as string)}`;
    case "too_small":
      return `${measured(input, "entries")}; expected ${issue.inclusive === false ? "more than" : "at least"} ${issue.minimum}`;
    case "too_big":
      return `${measured(input, "entries")}; expected ${issue.inclusive === false ? "less than" : "at most"} ${issue.maximum}`;
    case "invalid_value":
      return `is ${shown(input)}; expected ${(issue.values as unknown[]).map(shown).join(" or ")}`;
    default:
      return undefined;
  }
}
