import { type LayoutName, layoutOf } from "../layouts.ts";
import type { Plan, PlanTone, PlanVolume } from "../plan-schema.ts";
import { withoutLost } from "./kept-options.ts";
import { USUAL_CAP } from "./pots.ts";
import { tonesFor } from "./tones/tones-kept.ts";

/** What goes where a layout has a place that the plan before had not. */
const USUAL_PICKUPS: Readonly<Record<string, string>> = {
  neck: "single-vintage",
  middle: "single-vintage-rwrp",
  bridge: "single-medium",
};

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
