import { layoutOf } from "../../../src/build-file/plans/layouts.ts";
import { type Plan, type PlanInput, planSchema } from "../../../src/build-file/plans/plan-schema.ts";

type Loose = Record<string, unknown>;

const isMaster = (pickups: readonly string[] | undefined, all: readonly string[]) =>
  pickups === undefined || all.every((name) => pickups.includes(name));

function withoutDefaults(fields: Loose): Loose {
  const defaults: Loose = {
    taper: "audio",
    noLoad: false,
    ...(fields.pickups === undefined ? { pickups: undefined } : {}),
  };
  return Object.fromEntries(
    Object.entries(fields).filter(([key, value]) => value !== undefined && defaults[key] !== value),
  );
}

const shortened = (spec: Loose) => (Object.keys(spec).length === 1 ? spec.pot : spec);

/** The order in which poles are taken decides among splits by one switch; all others go from the bridge to the neck. */
function sortedSplits(plan: Plan, order: readonly string[]): Plan["split"] {
  const place = (pickup: string) => order.indexOf(pickup);
  const first = (by: unknown) =>
    Math.min(...plan.split.filter((split) => same(split.by, by)).map(({ pickup }) => place(pickup)));
  const isOnOneSwitch = (by: unknown) => typeof by === "string" || "switch" in (by as object);
  const key = (by: unknown, pickup: string) => (isOnOneSwitch(by) ? first(by) : place(pickup));
  return plan.split
    .map((split, i) => ({ split, i }))
    .sort((a, b) => key(a.split.by, a.split.pickup) - key(b.split.by, b.split.pickup) || a.i - b.i)
    .map(({ split }) => split);
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** Whether tones could be fed after the volume at all, or the field says nothing. */
function feedMatters(plan: Plan, order: readonly string[]): boolean {
  if (plan.tones.length === 0) return false;
  return layoutOf(plan.layout).volumes === 1 || plan.tones.some(({ pickups }) => !isMaster(pickups, order));
}

/**
 * A plan as `recognise` writes it, worked out from the plan alone. Resistors and splits are sorted, tones are not.
 * @param firstCoil of a pickup, which a split keeps unless told otherwise
 */
export function normalPlan(input: PlanInput, firstCoil: (pickup: string) => string): PlanInput {
  const plan = planSchema.parse(input);
  const order = Object.keys(plan.pickups).length === 1 ? Object.keys(plan.pickups) : layoutOf(plan.layout).pickups;
  const neckFirst = [...order].reverse();
  const tones = plan.tones.map(({ pickups, ...tone }) => ({
    ...withoutDefaults(tone),
    ...(isMaster(pickups, order) ? {} : { pickups: neckFirst.filter((name) => pickups?.includes(name)) }),
  }));
  const splits = sortedSplits(plan, order).map(({ pickup, by, keeps }) => ({
    pickup,
    by,
    ...(keeps === undefined || keeps === firstCoil(pickup) ? {} : { keeps }),
  }));
  const byPlace = <T extends { pickup: string }>(all: readonly T[]) =>
    [...all].sort((a, b) => order.indexOf(a.pickup) - order.indexOf(b.pickup));
  const single = <T>(all: readonly T[]) => (all.length === 0 ? undefined : all.length === 1 ? all[0] : all);
  // The volume of the only pickup stands across it, unless it is turned round.
  const isAcrossPickup = order.length === 1 && !plan.independentVolumes;
  const resistors = plan.resistors.map(({ across, resistance }) => ({
    across: isAcrossPickup && across === "volume" ? order[0] : across,
    resistance,
  }));
  const normal = {
    layout: plan.layout,
    pickups: Object.fromEntries(neckFirst.map((name) => [name, plan.pickups[name]])),
    volume: plan.volume && shortened(withoutDefaults(plan.volume)),
    volumes: plan.volumes,
    independentVolumes: plan.independentVolumes || undefined,
    tones: tones.length > 0 ? tones : undefined,
    sharedCap: plan.sharedCap,
    toneFeed: feedMatters(plan, order) && plan.toneFeed === "after-volume" ? plan.toneFeed : undefined,
    trebleBleed: plan.trebleBleed,
    split: single(splits),
    seriesParallel: single(byPlace(plan.seriesParallel)),
    phase: single(byPlace(plan.phase)),
    seriesLink: plan.seriesLink,
    alwaysOn: plan.alwaysOn,
    resistors: resistors.length > 0 ? resistors : undefined,
    grounds: plan.grounds === "star" ? plan.grounds : undefined,
    shield: plan.shield ? undefined : false,
  };
  return Object.fromEntries(Object.entries(normal).filter(([, value]) => value !== undefined)) as PlanInput;
}
