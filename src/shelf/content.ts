import type { Guard, GuardContent } from "./guard.ts";

/** The fields that a guard's owner changes. */
export const CONTENT_FIELDS = [
  "name",
  "guitar",
  "state",
  "made",
  "notes",
  "file",
  "readings",
] as const satisfies readonly (keyof GuardContent)[];

type Field = (typeof CONTENT_FIELDS)[number];

/** Whether a field says the same in both; readings are compared value by value. */
export function isSame(field: Field, a: Partial<GuardContent>, b: Partial<GuardContent>): boolean {
  return field === "readings" ? JSON.stringify(a.readings) === JSON.stringify(b.readings) : a[field] === b[field];
}

/** The fields in which two guards differ, whatever their ids, dates of change and histories are. */
export function differingFields(a: GuardContent, b: GuardContent): Field[] {
  return CONTENT_FIELDS.filter((field) => !isSame(field, a, b));
}

/** Some fields of a guard. */
export function fieldsOf(guard: Guard, fields: readonly Field[]): Partial<GuardContent> {
  return Object.fromEntries(fields.map((field) => [field, guard[field]]));
}
