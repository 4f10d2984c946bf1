import { layoutOf } from "../../layouts.ts";
import type { Plan } from "../../plan-schema.ts";
import { type PlanControl, withOption } from "../field.ts";
import { switchedField } from "./places-to-switch.ts";

function pairsOf(names: readonly string[]): [string, string][] {
  return names.flatMap((first) =>
    names.filter((second) => second !== first).map((second): [string, string] => [first, second]),
  );
}

export function linkFields(plan: Plan): PlanControl[] {
  const names = Object.keys(plan.pickups);
  if (names.length < 2) return [];
  const { seriesLink } = plan;
  const pairs = pairsOf(names);
  const usual = pairs.find(([first, second]) => first === "bridge" && second === "neck") ?? pairs[0]!;
  const pair = seriesLink?.pickups ?? usual;
  const named = { id: "seriesLink", option: "seriesLink", title: "Two pickups in series" };
  const field = switchedField(plan, { ...named, by: seriesLink?.by, ownSwitch: "seriesSwitch" }, (by) =>
    withOption(plan, "seriesLink", by === undefined ? undefined : { pickups: [...pair], by }),
  );
  if (!seriesLink) return [field];
  return [
    field,
    {
      id: "seriesLink.pickups",
      option: "seriesLink",
      title: "In series",
      kind: "choice",
      value: seriesLink.pickups.join(" "),
      choices: pairs.map((names_) => ({ value: names_.join(" "), label: `the ${names_[0]} on the ${names_[1]}` })),
      made: (value) => ({ ...plan, seriesLink: { ...seriesLink, pickups: value.split(" ") as [string, string] } }),
    },
  ];
}

export function alwaysOnFields(plan: Plan): PlanControl[] {
  if (layoutOf(plan.layout).selector === "none") return [];
  const { alwaysOn } = plan;
  const pickup = alwaysOn?.pickup ?? "bridge";
  const named = { id: "alwaysOn", option: "alwaysOn", title: "A pickup added to whatever is selected" };
  const field = switchedField(plan, { ...named, by: alwaysOn?.by, ownSwitch: "alwaysOnSwitch" }, (by) =>
    withOption(plan, "alwaysOn", by === undefined ? undefined : { pickup, by }),
  );
  if (!alwaysOn) return [field];
  return [
    field,
    {
      id: "alwaysOn.pickup",
      option: "alwaysOn",
      title: "Which is added",
      kind: "choice",
      value: pickup,
      choices: Object.keys(plan.pickups).map((name) => ({ value: name, label: `the ${name}` })),
      made: (name) => ({ ...plan, alwaysOn: { ...alwaysOn, pickup: name } }),
    },
  ];
}
