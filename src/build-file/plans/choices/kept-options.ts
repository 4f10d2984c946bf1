import { layoutOf } from "../layouts.ts";
import type { Plan, Where } from "../plan-schema.ts";
import { withOption } from "./field.ts";
import { hasFourLeads } from "./four-leads.ts";
import { potsOf } from "./pots.ts";

const isNamed = (where: Where | { position: number }): where is string => typeof where === "string";

interface Turned {
  readonly pickup: string;
  readonly by: Where | { position: number };
}

/** What is worked from a pot of another name now; where that pot is gone, undefined. */
function moved<Option extends { readonly by: Turned["by"] }>(
  option: Option,
  newNames: ReadonlyMap<string, string>,
): Option | undefined {
  if (!isNamed(option.by)) return option;
  const name = newNames.get(option.by);
  return name === undefined ? undefined : { ...option, by: name };
}

/** The pots that options are worked from. */
function potsInUse({ split, seriesParallel, phase, seriesLink, alwaysOn }: Plan): string[] {
  const all: { readonly by: Turned["by"] }[] = [...split, ...seriesParallel, ...phase];
  return [...all, ...(seriesLink ? [seriesLink] : []), ...(alwaysOn ? [alwaysOn] : [])]
    .map(({ by }) => by)
    .filter(isNamed);
}

/**
 * What the pots of a plan are called in the one after it: volumes by volumes and tones by tones, in their order. What is worked from
 * a pot that is gone goes to the last one whose shaft is free.
 */
function namesAfter(plan: Plan, before: Plan): ReadonlyMap<string, string> {
  const [old, now] = [potsOf(before), potsOf(plan)].map((pots) => pots.map(({ name }) => name));
  const names = new Map<string, string>();
  for (const sort of ["volume", "tone"]) {
    const there = now!.filter((name) => name.startsWith(sort));
    for (const [index, name] of old!.filter((each) => each.startsWith(sort)).entries())
      if (there[index] !== undefined) names.set(name, there[index]);
  }
  const used = potsInUse(before);
  for (const lost of new Set(used.filter((name) => !names.has(name)))) {
    const taken = new Set(used.map((name) => names.get(name)));
    const free = now!.findLast((name) => !taken.has(name));
    if (free !== undefined) names.set(lost, free);
  }
  return names;
}

/** Takes options off pickups and pots that are gone, and calls pots by the names that they have in the plan now. */
export function withoutLost(plan: Plan, before: Plan): Plan {
  const newNames = namesAfter(plan, before);
  const kept = <Option extends Turned>(options: readonly Option[], isWanted: (option: Option) => boolean): Option[] =>
    options.flatMap((option) => {
      const here = option.pickup in plan.pickups && isWanted(option) ? moved(option, newNames) : undefined;
      return here ? [here] : [];
    });
  const { selector } = layoutOf(plan.layout);
  const link = plan.seriesLink && moved(plan.seriesLink, newNames);
  const always = plan.alwaysOn && plan.alwaysOn.pickup in plan.pickups && moved(plan.alwaysOn, newNames);
  const four = ({ pickup }: Turned) => hasFourLeads(plan.pickups[pickup]!);
  const across = (name: string) => (name in plan.pickups ? name : newNames.get(name));
  const next: Plan = {
    ...plan,
    split: kept(plan.split, (each) => four(each) && (!("position" in Object(each.by)) || selector === "lever-5")),
    seriesParallel: kept(plan.seriesParallel, four),
    phase: kept(plan.phase, () => true),
    resistors: plan.resistors.flatMap((each) => {
      const name = across(each.across);
      return name === undefined ? [] : [{ ...each, across: name }];
    }),
  };
  const linked = withOption(
    next,
    "seriesLink",
    link?.pickups.every((pickup) => pickup in plan.pickups) ? link : undefined,
  );
  return withOption(linked, "alwaysOn", always && selector !== "none" ? always : undefined);
}
