import { pickupType } from "../../build-file/catalogue/pickup-types.ts";
import { layoutOf } from "../../build-file/plans/layouts.ts";
import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import type { Build } from "../../build-file/schema.ts";
import { shortQuantity, showQuantity } from "../../build-file/show-quantity.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { capitalised } from "../../english.ts";

type Where = string | { readonly switch: string } | { readonly position: number };

function whereWords(where: Where, words: ReadonlyMap<string, string>): string {
  if (typeof where === "string") return `push-pull on the ${words.get(where) ?? where}`;
  return "switch" in where
    ? `small switch ${where.switch.replace(/^switch(?=\d)/, "")}`
    : `the lever in position ${where.position}`;
}

const listOf = <T>(value: T | readonly T[] | undefined): readonly T[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value as T];

function switchedWords(plan: PlanInput, words: ReadonlyMap<string, string>): string[] {
  const at = (where: Where) => whereWords(where, words);
  return [
    ...listOf(plan.split).map(({ pickup, by, keeps }) => `${at(by)}: splits the ${pickup}, the ${keeps} coil stays`),
    ...listOf(plan.seriesParallel).map(({ pickup, by }) => `${at(by)}: the ${pickup}'s coils in parallel`),
    ...listOf(plan.phase).map(({ pickup, by }) => `${at(by)}: turns the ${pickup}'s phase round`),
    ...(plan.seriesLink ? [`${at(plan.seriesLink.by)}: ${plan.seriesLink.pickups.join(" and ")} in series`] : []),
    ...(plan.alwaysOn ? [`${at(plan.alwaysOn.by)}: adds the ${plan.alwaysOn.pickup} to any position`] : []),
  ];
}

function pickupWords(build: Build): string[] {
  return Object.entries(build.parts).flatMap(([name, part]) => {
    if (part.kind !== "pickup") return [];
    const title = part.type === undefined ? undefined : pickupType(part.type)?.title;
    return [
      `${name}: ${title ? title.charAt(0).toLowerCase() + title.slice(1) : (part.label ?? "pickup of one's own")}`,
    ];
  });
}

function potWords(build: Build, words: ReadonlyMap<string, string>): string {
  const pots = Object.entries(build.parts).flatMap(([name, part]) =>
    part.kind === "pot" ? [`${words.get(name) ?? name} ${shortQuantity(part.measured ?? part.resistance)}`] : [],
  );
  const caps = Object.values(build.parts).flatMap((part) =>
    part.kind === "cap"
      ? [`${part.label?.toLowerCase() ?? "cap"} ${showQuantity(part.capacitance, "capacitance", 3)}`]
      : [],
  );
  return [...pots, ...caps].join(", ");
}

const TONE_WORDS = ["no tone", "one tone", "two tones"];

/** The layout's title with the tones that this guard has. */
function layoutWords({ layout, tones = [] }: PlanInput): string {
  const title = layoutOf(layout).title.split(", ");
  return [...title.slice(0, -1), TONE_WORDS[tones.length]].join(", ");
}

/** A guard of the drawer in words, line by line. */
export function guardWords(plan: PlanInput, build: Build): string[] {
  const words = partWords(build.parts);
  return [
    layoutWords(plan),
    capitalised(pickupWords(build).join("; ")),
    capitalised(potWords(build, words)),
    ...switchedWords(plan, words).map(capitalised),
  ];
}
