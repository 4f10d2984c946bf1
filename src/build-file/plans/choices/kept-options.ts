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

/** What is worked from a pot of another name now; where there is none for it, undefined. */
function moved<Option extends { readonly by: Turned["by"] }>(
  option: Option,
  shafts: ReadonlyMap<string, string>,
): Option | undefined {
  if (!isNamed(option.by)) return option;
  const name = shafts.get(option.by);
  return name === undefined ? undefined : { ...option, by: name };
}

/** The pots that a plan's options are worked from, those left aside of pickups that are gone. */
function potsInUse({ split, seriesParallel, phase, seriesLink, alwaysOn }: Plan, there: Plan["pickups"]): string[] {
  const of = (option: { readonly by: Turned["by"] }, ...pickups: readonly string[]) =>
    isNamed(option.by) && pickups.every((pickup) => pickup in there) ? [option.by] : [];
  return [
    ...[...split, ...seriesParallel, ...phase].flatMap((option) => of(option, option.pickup)),
    ...(seriesLink ? of(seriesLink, ...seriesLink.pickups) : []),
    ...(alwaysOn ? of(alwaysOn, alwaysOn.pickup) : []),
  ];
}

/** What the pots of a plan are called in the one after it: volumes by volumes and tones by tones, in their order. */
function renamed(plan: Plan, before: Plan): ReadonlyMap<string, string> {
  const named = (of: Plan, sort: string) => potsOf(of).flatMap(({ name }) => (name.startsWith(sort) ? [name] : []));
  const pairs = ["volume", "tone"].flatMap((sort) => {
    const there = named(plan, sort);
    return named(before, sort).flatMap((name, index) => (there[index] ? [[name, there[index]] as const] : []));
  });
  return new Map(pairs);
}

/** Where options go that are worked from a pot: to the same one, and from one that is gone to the last whose shaft is free. */
function shaftsAfter(plan: Plan, before: Plan, names: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  const shafts = new Map(names);
  const used = potsInUse(before, plan.pickups);
  for (const lost of new Set(used.filter((name) => !names.has(name)))) {
    const taken = new Set(used.map((name) => shafts.get(name)));
    const free = potsOf(plan).findLast(({ name }) => !taken.has(name));
    if (free) shafts.set(lost, free.name);
  }
  return shafts;
}

/** Whether any two pickups sound together: alone, one sounds the same either way round. */
export function isPhaseHeard({ layout, seriesLink, alwaysOn }: Plan): boolean {
  const { selector } = layoutOf(layout);
  return (selector !== "lever-3" && selector !== "none") || seriesLink !== undefined || alwaysOn !== undefined;
}

/** Takes options off pickups and pots that are gone, and calls pots by the names that they have in the plan now. */
export function withoutLost(plan: Plan, before: Plan): Plan {
  const newNames = renamed(plan, before);
  const shafts = shaftsAfter(plan, before, newNames);
  const kept = <Option extends Turned>(options: readonly Option[], isWanted: (option: Option) => boolean): Option[] =>
    options.flatMap((option) => {
      const here = option.pickup in plan.pickups && isWanted(option) ? moved(option, shafts) : undefined;
      return here ? [here] : [];
    });
  const { selector } = layoutOf(plan.layout);
  const link = plan.seriesLink && moved(plan.seriesLink, shafts);
  const always = plan.alwaysOn && plan.alwaysOn.pickup in plan.pickups && moved(plan.alwaysOn, shafts);
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
  const done = withOption(linked, "alwaysOn", always && selector !== "none" ? always : undefined);
  return isPhaseHeard(done) ? done : { ...done, phase: [] };
}
