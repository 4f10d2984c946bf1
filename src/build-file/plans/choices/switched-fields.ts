import { layoutOf } from "../layouts.ts";
import type { Plan, Where } from "../plan-schema.ts";
import { NONE, nothing, type PlanChoice, type PlanControl, withOption } from "./field.ts";
import { hasFourLeads } from "./four-leads.ts";
import { isPhaseHeard } from "./kept-options.ts";
import { potsOf } from "./pots.ts";

type By = Where | { readonly position: number };

function keyOf(by: By | undefined): string {
  if (by === undefined) return NONE;
  if (typeof by === "string") return `pot ${by}`;
  return "switch" in by ? `switch ${by.switch}` : `position ${by.position}`;
}

/** What a choice of `placesToSwitch` stands for. */
function byOf(key: string): By | undefined {
  const [sort, name] = key.split(" ");
  if (sort === "pot") return name!;
  if (sort === "switch") return { switch: name! };
  return sort === "position" ? { position: Number(name) } : undefined;
}

/** Every pot's push-pull, a switch of its own, and what it is worked from now. */
function placesToSwitch(plan: Plan, by: By | undefined, ownSwitch: string): PlanChoice[] {
  const pots = potsOf(plan).map(({ name, words }) => ({ value: keyOf(name), label: `push-pull on the ${words}` }));
  const own = { value: keyOf({ switch: ownSwitch }), label: "a small switch of its own" };
  const isOther = typeof by === "object" && "switch" in by && by.switch !== ownSwitch;
  const other = isOther ? [{ value: keyOf(by), label: `the small switch “${by.switch}”` }] : [];
  return [nothing, ...pots, own, ...other];
}

const AUTOMATIC: Readonly<Record<string, number>> = { bridge: 2, neck: 4 };

function splitFields(plan: Plan, pickup: string): PlanControl[] {
  const own = plan.split.find((split) => split.pickup === pickup);
  const others = plan.split.filter((split) => split.pickup !== pickup);
  const position = AUTOMATIC[pickup];
  const automatic =
    layoutOf(plan.layout).selector === "lever-5" && position !== undefined
      ? [{ value: keyOf({ position }), label: `by the lever, in position ${position}` }]
      : [];
  const made = (next: Plan["split"][number] | undefined): Plan => ({
    ...plan,
    split: next ? [...others, next] : others,
  });
  const field: PlanControl = {
    id: `split.${pickup}`,
    option: "split",
    title: `Split the ${pickup}`,
    kind: "choice",
    value: keyOf(own?.by),
    choices: [...placesToSwitch(plan, own?.by, `${pickup}Split`), ...automatic],
    made: (value) => {
      const by = byOf(value);
      return made(by === undefined ? undefined : { ...own, pickup, by });
    },
  };
  if (!own) return [field];
  return [
    field,
    {
      id: `split.${pickup}.keeps`,
      option: "split",
      title: `Split ${pickup} keeps`,
      kind: "choice",
      value: own.keeps ?? coilsOf(plan, pickup)[0]!,
      choices: coilsOf(plan, pickup).map((coil) => ({ value: coil, label: `the ${coil} coil` })),
      made: (keeps) => made({ ...own, keeps }),
    },
  ];
}

function coilsOf(plan: Plan, pickup: string): string[] {
  const spec = plan.pickups[pickup]!;
  return typeof spec !== "string" && "kind" in spec ? Object.keys(spec.coils) : ["slug", "screw"];
}

interface Switched {
  readonly id: string;
  readonly option: string;
  readonly title: string;
  /** What it is worked from now. */
  readonly by: Where | undefined;
  /** What a switch of its own would be called. */
  readonly ownSwitch: string;
}

/** An option that is worked from a push-pull or a switch of its own, or not there. */
function switchedField(
  plan: Plan,
  { by, ownSwitch, ...named }: Switched,
  made: (by: Where | undefined) => Plan,
): PlanControl {
  return {
    ...named,
    kind: "choice",
    value: keyOf(by),
    choices: placesToSwitch(plan, by, ownSwitch),
    made: (value) => made(byOf(value) as Where | undefined),
  };
}

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

function pairsOf(names: readonly string[]): [string, string][] {
  return names.flatMap((first) =>
    names.filter((second) => second !== first).map((second): [string, string] => [first, second]),
  );
}

function linkFields(plan: Plan): PlanControl[] {
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

function alwaysOnFields(plan: Plan): PlanControl[] {
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
