import { pickupType } from "../../catalogue/pickup-types.ts";
import { hasCoilLeads } from "../../lug-names.ts";
import { type LayoutName, layoutOf } from "../layouts.ts";
import type { Plan, PlanPickup, PlanTone, PlanVolume, Where } from "../plan-schema.ts";
import { potsOf } from "./pots.ts";

/** What goes where a layout has a place that the plan before had not. */
const USUAL_PICKUPS: Readonly<Record<string, string>> = {
  neck: "single-vintage",
  middle: "single-vintage-rwrp",
  bridge: "single-medium",
};
export const USUAL_CAP = "22n";

export function typeOf(pickup: PlanPickup): string | undefined {
  return typeof pickup === "string" ? pickup : pickup.type;
}

/** Whether a pickup has two coils with leads of their own, which splits and series switches need. */
export function hasFourLeads(pickup: PlanPickup): boolean {
  if (typeof pickup !== "string" && "kind" in pickup) return hasCoilLeads(pickup);
  const type = pickupType(typeOf(pickup) ?? "");
  if (!type) return false;
  const conductors = typeof pickup === "string" ? type.conductors : (pickup.conductors ?? type.conductors);
  return hasCoilLeads({ coils: type.coils, conductors });
}

/** A plan without an option, or with another value for it. */
export function withOption<Key extends keyof Plan>(plan: Plan, key: Key, value: Plan[Key] | undefined): Plan {
  const { [key]: _, ...rest } = plan;
  return (value === undefined ? rest : { ...rest, [key]: value }) as Plan;
}

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

/** Takes options off pickups and pots that are gone, and calls pots by the names that they have in the plan now. */
function withoutLost(plan: Plan, before: Plan): Plan {
  const [old, now] = [potsOf(before), potsOf(plan)];
  const sorts = ["volume", "tone"].map((sort) =>
    [old, now].map((pots) => pots.filter(({ name }) => name.startsWith(sort)).map(({ name }) => name)),
  );
  const newNames = new Map(
    sorts.flatMap(([was, is]) => was!.flatMap((name, index) => (is![index] ? [[name, is![index]!] as const] : []))),
  );
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

function tonesFor(plan: Plan, layoutName: LayoutName): PlanTone[] {
  const { tones, pickups, selector } = layoutOf(layoutName);
  const kept = plan.tones.slice(0, tones.max).map(({ pickups: own, ...tone }): PlanTone => {
    const there = own?.filter((pickup) => pickups.includes(pickup)) ?? [];
    // Without a pole for the tones one knob cannot work on two pickups and leave a third alone.
    const isShared = there.length > 1 && !selector.startsWith("lever-5") && selector !== "lever-3";
    return there.length === 0 || isShared ? tone : { ...tone, pickups: there };
  });
  const neckFirst = [...pickups].reverse();
  while (kept.length < tones.min) {
    const taken = new Set(kept.flatMap((tone) => tone.pickups ?? []));
    const free = neckFirst.filter((pickup) => !taken.has(pickup));
    const model = kept.at(-1) ?? { pot: potOf(plan), cap: USUAL_CAP };
    kept.push({ ...model, pickups: [free[0] ?? neckFirst[0]!] });
  }
  // A master beside a knob for one pickup would work on that one twice.
  if (kept.length !== 2 || kept.every(({ pickups: own }) => own) || kept.every(({ pickups: own }) => !own)) return kept;
  const owned = kept.flatMap((tone) => tone.pickups ?? []);
  const rest = neckFirst.filter((pickup) => !owned.includes(pickup));
  return kept.map((tone) => (tone.pickups ? tone : { ...tone, pickups: rest.slice(0, 1) }));
}

/** The track resistance of a plan's first volume, as written. */
export function potOf(plan: Plan): PlanVolume["pot"] {
  const first = (plan.volume as PlanVolume | undefined) ?? plan.volumes?.[0];
  return first?.pot ?? "250k";
}

function volumesFor(plan: Plan, layoutName: LayoutName): Pick<Plan, "volume" | "volumes"> {
  const isOne = layoutOf(layoutName).volumes === 1;
  if (!isOne && plan.volumes) return { volumes: plan.volumes };
  const { pickups: _, ...volume } = (plan.volume as PlanVolume | undefined) ?? plan.volumes?.[0] ?? { pot: "250k" };
  return { volume };
}

/** A plan for another layout with all that still has a place there. */
export function withLayout(plan: Plan, layoutName: LayoutName): Plan {
  const layout = layoutOf(layoutName);
  const { volume: _volume, volumes: _volumes, sharedCap, ...rest } = plan;
  const names = layout.selector === "none" ? ["bridge"] : [...layout.pickups].reverse();
  const own = Object.values(plan.pickups)[0]!;
  const pickups = Object.fromEntries(
    names.map((name) => [name, plan.pickups[name] ?? (names.length === 1 ? own : USUAL_PICKUPS[name]!)]),
  );
  const tones = tonesFor(plan, layoutName);
  const keepsCap = sharedCap !== undefined && tones.length === 2;
  const isByPole = layout.selector === "lever-5" || layout.selector === "lever-3" || layout.volumes === 2;
  const canFeedAfter = isByPole || tones.every((tone) => !tone.pickups);
  const next = {
    ...rest,
    layout: layoutName,
    pickups,
    ...volumesFor(plan, layoutName),
    tones: tones.map((tone) => (keepsCap || tone.cap !== undefined ? tone : { ...tone, cap: sharedCap ?? USUAL_CAP })),
    ...(keepsCap ? { sharedCap } : {}),
    independentVolumes: plan.independentVolumes && layout.volumes === 2,
    toneFeed: canFeedAfter ? plan.toneFeed : "before-volume",
  } as Plan;
  return withoutLost(next, plan);
}

/** A plan with other pickups in its places; what needs four leads goes where they have fewer. */
export function withPickups(plan: Plan, pickups: Readonly<Record<string, string>>): Plan {
  return withoutLost({ ...plan, pickups: { ...plan.pickups, ...pickups } }, plan);
}

/** A plan with other tones. */
export function withTones(plan: Plan, tones: readonly PlanTone[]): Plan {
  return withoutLost({ ...plan, tones: [...tones] }, plan);
}
