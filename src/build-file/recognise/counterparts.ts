import { partName } from "../part-schemas.ts";
import type { Draft } from "../plans/draft.ts";

/** "tone" and "tone1" are the same pot, with one tone and with two. */
function otherName(planName: string): string | undefined {
  if (/1$/.test(planName)) return planName.slice(0, -1);
  return /\d$/.test(planName) ? undefined : `${planName}1`;
}

/** The old plan's name of each part of the new plan that both have. */
export function counterparts(old: Draft, next: Draft): Map<string, string> {
  const found = new Map<string, string>();
  for (const [name, part] of Object.entries(next.parts)) {
    const other = otherName(name);
    if (old.parts[name]?.kind === part.kind) found.set(name, name);
    else if (other !== undefined && !(other in next.parts) && old.parts[other]?.kind === part.kind)
      found.set(name, other);
  }
  return found;
}

function unused(name: string, used: ReadonlySet<string>): string {
  for (let i = 0; ; i++) {
    const candidate = i === 0 ? name : `${name.slice(0, 28)}-${i + 1}`;
    if (!used.has(candidate) && partName.safeParse(candidate).success) return candidate;
  }
}

/**
 * What the guard will call each part of the new plan: as it does, unless it calls it by the old plan's own name.
 * @param names the guard's name of each part of the old plan
 * @param taken names of parts that are no plan's
 */
export function newNames(
  next: Draft,
  inOld: ReadonlyMap<string, string>,
  names: ReadonlyMap<string, string>,
  taken: readonly string[],
): Map<string, string> {
  const used = new Set(taken);
  const given = new Map<string, string>();
  const isOwn = (planName: string) => {
    const name = names.get(inOld.get(planName) ?? "");
    return name !== undefined && name !== inOld.get(planName);
  };
  const inTurn = Object.keys(next.parts).sort((a, b) => Number(isOwn(b)) - Number(isOwn(a)));
  for (const planName of inTurn) {
    const name = unused(isOwn(planName) ? names.get(inOld.get(planName)!)! : planName, used);
    used.add(name);
    given.set(planName, name);
  }
  return given;
}
