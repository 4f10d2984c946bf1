import type { Plan } from "../../plan-schema.ts";
import { nothing, type PlanControl } from "../field.ts";
import { hasFourLeads } from "../four-leads.ts";
import { isPhaseHeard } from "../kept-options.ts";
import { alwaysOnFields, linkFields } from "./pair-fields.ts";
import { switchedField } from "./places-to-switch.ts";
import { splitFields } from "./split-fields.ts";

type Alike = "seriesParallel" | "phase";

const ALIKE_TITLES: Readonly<Record<Alike, (pickup: string) => string>> = {
  seriesParallel: (pickup) => `Coils of the ${pickup} in series or parallel`,
  phase: (pickup) => `Phase of the ${pickup}`,
};

function alikeField(plan: Plan, option: Alike, pickup: string): PlanControl {
  const own = plan[option].find((each) => each.pickup === pickup);
  const others = plan[option].filter((each) => each.pickup !== pickup);
  const suffix = option === "phase" ? "Phase" : "Series";
  const named = { id: `${option}.${pickup}`, option, title: ALIKE_TITLES[option](pickup) };
  const field = switchedField(plan, { ...named, by: own?.by, ownSwitch: `${pickup}${suffix}` }, (by) => ({
    ...plan,
    [option]: by === undefined ? others : [...others, { pickup, by }],
  }));
  const isIdle = option === "phase" && !isPhaseHeard(plan) && field.kind === "choice";
  if (!isIdle) return field;
  const reason = `${pickup} never sounds beside another pickup, and alone it sounds the same either way round`;
  return { ...field, choices: field.choices.map((each) => (each === nothing ? each : { ...each, reason })) };
}

/** What push-pulls, small switches and the lever itself can do beside selecting. */
export function switchedFields(plan: Plan): PlanControl[] {
  const names = Object.keys(plan.pickups);
  const coils = names.filter((name) => hasFourLeads(plan.pickups[name]!));
  return [
    ...coils.flatMap((name) => splitFields(plan, name)),
    ...coils.map((name) => alikeField(plan, "seriesParallel", name)),
    ...names.map((name) => alikeField(plan, "phase", name)),
    ...linkFields(plan),
    ...alwaysOnFields(plan),
  ];
}
