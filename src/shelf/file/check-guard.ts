import { MAX_VERSIONS } from "../amend.ts";
import { MAX_FILE_CHARS, MAX_LINE_CHARS, MAX_NOTES_CHARS, MAX_READINGS, MAX_VALUES } from "../bounds.ts";
import { GUARD_STATES, type Guard, REPLACED_BY } from "../guard.ts";
import { type Check, listOf, objectOf, oneOf, refuse, someOf, textLike, textUpTo } from "./checks.ts";

const day: Check<string> = (value, path) => {
  const expected = "a day, YYYY-MM-DD";
  const text = textLike(/^\d{4}-\d{2}-\d{2}$/, expected)(value, path);
  const date = new Date(`${text}T00:00:00Z`);
  // 31 April would be taken for 1 May.
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text) ? text : refuse(value, path, expected);
};

const instant: Check<string> = (value, path) => {
  const expected = "a moment such as 2026-03-01T18:30:00.000Z";
  const text = textLike(/^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/, expected)(value, path);
  return Number.isNaN(Date.parse(text)) ? refuse(value, path, expected) : text;
};

const id = textLike(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/, "a UUID in small letters");
const line = textUpTo(MAX_LINE_CHARS);

const readings = listOf(
  objectOf({
    id,
    date: day,
    note: textUpTo(MAX_NOTES_CHARS),
    values: listOf(objectOf({ what: line, read: line }), MAX_VALUES),
  }),
  MAX_READINGS,
);

const content = {
  name: line,
  guitar: line,
  state: oneOf(GUARD_STATES),
  made: day,
  notes: textUpTo(MAX_NOTES_CHARS),
  file: textUpTo(MAX_FILE_CHARS),
  readings,
};

const version = objectOf({ at: instant, by: oneOf(REPLACED_BY), was: someOf(content) });

const guard = objectOf({ id, ...content, changed: instant, history: listOf(version, MAX_VERSIONS) });

/** A guard as a shelf file has it. @throws CheckError naming the field, its value and what was expected */
export function checkGuard(value: unknown): Guard {
  return guard(value, "");
}
