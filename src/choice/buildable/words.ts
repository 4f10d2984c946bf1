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

/** What each switch does, in a line: two poles of one are thrown at once. */
function switchedWords(plan: PlanInput, words: ReadonlyMap<string, string>): string[] {
  const { seriesLink, alwaysOn } = plan;
  const duties: readonly (readonly [by: Where, duty: string])[] = [
    ...listOf(plan.split).map(
      ({ pickup, by, keeps }) => [by, `splits the ${pickup}, the ${keeps} coil stays`] as const,
    ),
    ...listOf(plan.seriesParallel).map(({ pickup, by }) => [by, `the ${pickup}'s coils in parallel`] as const),
    ...listOf(plan.phase).map(({ pickup, by }) => [by, `turns the ${pickup}'s phase round`] as const),
    ...(seriesLink ? [[seriesLink.by, `${seriesLink.pickups.join(" and ")} in series`] as const] : []),
    ...(alwaysOn ? [[alwaysOn.by, `adds the ${alwaysOn.pickup} to any position`] as const] : []),
  ];
  const lines = new Map<string, string[]>();
  for (const [by, duty] of duties) {
    const where = whereWords(by, words);
    lines.set(where, [...(lines.get(where) ?? []), duty]);
  }
  return Array.from(lines, ([where, all]) => `${where}: ${all.join("; ")}`);
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
