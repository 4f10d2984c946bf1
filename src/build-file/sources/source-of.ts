import { pickupType } from "../catalogue/pickup-types.ts";
import { PART_RULES } from "./part-rules.ts";
import { PICKUP_RULES } from "./pickup-rules.ts";
import type { SourceRule } from "./rule.ts";
import { SURROUNDING_RULES } from "./surrounding-rules.ts";

export const SOURCE_RULES: readonly SourceRule[] = [...PICKUP_RULES, ...PART_RULES, ...SURROUNDING_RULES];

const STEPS = SOURCE_RULES.map(({ of }) => of.split("."));

function fits(pattern: readonly string[], steps: readonly string[]): boolean {
  const rest = pattern.indexOf("**");
  const [fixed, length] = rest < 0 ? [pattern.length, pattern.length] : [rest, rest + 1];
  if (rest < 0 ? steps.length !== length : steps.length < length) return false;
  return pattern.slice(0, fixed).every((step, index) => step === "*" || step.split("|").includes(steps[index]!));
}

/** How a path may be named in a rule: a coil's name does not matter, and a pickup's type may stand for what it rests on. */
function namesOf(path: string): string[][] {
  const steps = path.split(".");
  const [list, type, coils, ...rest] = steps;
  if (list !== "pickups" || type === undefined) return [steps];
  const inner = coils === "coils" ? rest.slice(1) : [coils!, ...rest];
  const basis = pickupType(type)?.basis;
  return [[list, type, ...inner], ...(basis === undefined ? [] : [[list, basis, ...inner]])];
}

/** Where a value of the catalogue comes from; undefined where no rule names it. @param path "pots.250k.value" */
export function ruleOf(path: string): SourceRule | undefined {
  const names = namesOf(path);
  const at = STEPS.findIndex((pattern) => names.some((steps) => fits(pattern, steps)));
  return SOURCE_RULES[at];
}
