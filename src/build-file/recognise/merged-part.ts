import { withFittingBody } from "../bodies/fitting-body.ts";
import { hasCoilLeads } from "../lug-names.ts";
import type { PartInput } from "../plans/draft.ts";
import { same } from "./same.ts";

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What a person may have written beside a part, which is theirs whatever the plan says. */
const BY_HAND = ["label", "place", "tolerance", "dielectric", "lossFactor"];

/** A field as the new plan has it where the plans differ in it, else as it was. */
function mergedField(key: string, was: unknown, old: unknown, next: unknown): unknown {
  if (BY_HAND.includes(key)) return same(was, old) ? next : was;
  if (key === "coils" && isFields(was) && isFields(old) && isFields(next) && haveSameKeys(was, old, next))
    return Object.fromEntries(Object.keys(next).map((coil) => [coil, merged(was[coil], old[coil], next[coil])]));
  return same(old, next) ? was : next;
}

const haveSameKeys = (...all: Fields[]) => all.every((fields) => same(Object.keys(fields), Object.keys(all[0]!)));

function merged(was: unknown, old: unknown, next: unknown): unknown {
  if (!isFields(was) || !isFields(old) || !isFields(next)) return next;
  const keys = [...new Set([...Object.keys(next), ...Object.keys(was)])];
  const entries = keys.map((key) => [key, mergedField(key, was[key], old[key], next[key])] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

/** Another pickup in the same place: what was written on the one that goes out goes with it. */
function isExchanged(old: PartInput, next: PartInput): boolean {
  return (
    old.kind === "pickup" && next.kind === "pickup" && !(old.type === next.type && haveSameKeys(old.coils, next.coils))
  );
}

/**
 * A part under a new plan: what the plans say alike stays as the guard has it, and so does what was written on it by hand. A pot
 * that was measured stays measured for as long as its nominal value does.
 */
export function mergedPart(was: PartInput, old: PartInput, next: PartInput): PartInput {
  if (isExchanged(old, next)) return same(was.place, old.place) ? next : ({ ...next, place: was.place } as PartInput);
  const part = withFittingBody(merged(was, old, next) as PartInput);
  // Where other leads come out of it, the names of the old ones mean nothing.
  if (part.kind === "pickup" && was.kind === "pickup" && hasCoilLeads(part) !== hasCoilLeads(was)) {
    const { leads: _leads, ...rest } = part;
    return rest;
  }
  const isSamePot =
    was.kind === "pot" && old.kind === "pot" && next.kind === "pot" && same(old.resistance, next.resistance);
  if (isSamePot && part.kind === "pot" && next.measured === undefined && was.measured !== undefined)
    return { ...part, measured: was.measured };
  return part;
}
