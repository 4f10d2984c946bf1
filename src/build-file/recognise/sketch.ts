import { type LayoutName, layoutOf } from "../plans/layouts.ts";
import { positionOf } from "../plans/plan-pickups.ts";
import type { Plan, PlanInput } from "../plans/plan-schema.ts";
import type { BuildInput } from "../schema.ts";
import { type Guard, partOf } from "./guard.ts";
import { type PickupSpec, pickupSpec } from "./pickup-spec.ts";

/** A pot's push-pull, or a switch of its own, by the guard's name. */
export interface SwitchAt {
  readonly part: string;
  readonly onShaft: boolean;
}

/** Something that a two-way switch does. Pickups go by the plan's names. */
export type Option =
  | { readonly kind: "split"; readonly pickup: string; readonly keeps: string; readonly at: SwitchAt }
  | { readonly kind: "automatic"; readonly pickup: string; readonly keeps: string }
  | { readonly kind: "seriesParallel" | "phase" | "alwaysOn"; readonly pickup: string; readonly at: SwitchAt }
  | { readonly kind: "seriesLink"; readonly pickups: readonly [string, string]; readonly at: SwitchAt };

export interface ToneSketch {
  /** Undefined where the layout asks for a tone that the guard has not. */
  readonly pot: string | undefined;
  readonly cap: string | undefined;
  /** Empty for a master tone. */
  readonly pickups: readonly string[];
}

export interface BleedSketch {
  /** For each volume: its cap and its resistor. */
  readonly caps: readonly (string | undefined)[];
  readonly resistors: readonly (string | undefined)[];
  readonly how: "alone" | "parallel" | "series";
}

/** A plan in terms of a guard's own parts: what each of them would be in it. */
export interface Sketch {
  readonly layout: LayoutName;
  /** The guard's name of each pickup, by the plan's. */
  readonly pickups: Readonly<Record<string, string>>;
  readonly selector: string | undefined;
  readonly volumes: readonly { readonly pot: string | undefined; readonly pickup: string | undefined }[];
  readonly independent: boolean;
  readonly tones: readonly ToneSketch[];
  readonly sharedCap: string | undefined;
  readonly toneFeed: "before-volume" | "after-volume";
  readonly bleed: BleedSketch | undefined;
  readonly options: readonly Option[];
  readonly resistors: readonly {
    readonly part: string;
    readonly across: { readonly pickup: string } | { readonly pot: string };
  }[];
  readonly star: string | undefined;
  readonly shield: string | undefined;
  readonly claw: string | undefined;
  readonly jack: string;
}

type PotSpec = NonNullable<PlanInput["tones"]>[number];

const USUAL_POT = "250k";
const USUAL_CAP = "22n";

function potSpec(guard: Guard, name: string | undefined): { pot: PotSpec["pot"] } & Partial<PotSpec> {
  if (name === undefined) return { pot: USUAL_POT };
  const part = guard.written.parts[name] as Extract<BuildInput["parts"][string], { kind: "pot" }>;
  const { resistance, taper = "linear", midpoint, measured, noLoad } = part;
  return {
    pot: resistance,
    ...(taper === "audio" ? {} : { taper }),
    ...(midpoint === undefined ? {} : { midpoint }),
    ...(measured === undefined ? {} : { measured }),
    ...(noLoad ? { noLoad } : {}),
  };
}

/** What is written on a cap or a resistor. */
function valueWritten(guard: Guard, name: string | undefined, otherwise: string): number | string {
  const part = name === undefined ? undefined : guard.written.parts[name];
  if (part?.kind === "cap") return part.capacitance;
  return part?.kind === "resistor" ? part.resistance : otherwise;
}

const numbered = (base: string, count: number, index: number) => (count === 1 ? base : `${base}${index + 1}`);

/** Names that a plan's own parts may have, which a switch of its own must not take. */
const TAKEN =
  /^(neck|middle|bridge|lever|toggle|jack|claw|shield|star|(volume|tone|cap|bleed|bleedResistor|resistor)\d?)$/;

export function planNameOfSwitch(name: string): string {
  return TAKEN.test(name) ? `${name}Switch`.slice(0, 32) : name;
}

interface Naming {
  /** Plan's name of a pot, by the guard's. */
  readonly pots: ReadonlyMap<string, string>;
}

function byOf(at: SwitchAt, { pots }: Naming): string | { switch: string } {
  return at.onShaft ? (pots.get(at.part) ?? at.part) : { switch: planNameOfSwitch(at.part) };
}

function potNames(sketch: Sketch): Map<string, string> {
  const pots = new Map<string, string>();
  for (const [i, { pot }] of sketch.volumes.entries())
    if (pot !== undefined) pots.set(pot, numbered("volume", sketch.volumes.length, i));
  for (const [i, { pot }] of sketch.tones.entries())
    if (pot !== undefined) pots.set(pot, numbered("tone", sketch.tones.length, i));
  return pots;
}

/** The guard's name of each part of the plan's long form. */
export function namesIn(sketch: Sketch): Map<string, string> {
  const names = new Map<string, string>(Object.entries(sketch.pickups));
  const add = (planName: string, name: string | undefined) => name !== undefined && names.set(planName, name);
  for (const [pot, planName] of potNames(sketch)) add(planName, pot);
  const { tones, volumes, resistors, bleed } = sketch;
  if (sketch.sharedCap === undefined)
    for (const [i, { cap }] of tones.entries()) add(numbered("cap", tones.length, i), cap);
  else add("cap", sketch.sharedCap);
  for (const i of volumes.keys()) {
    add(numbered("bleed", volumes.length, i), bleed?.caps[i]);
    if (bleed?.how !== "alone") add(numbered("bleedResistor", volumes.length, i), bleed?.resistors[i]);
  }
  for (const [i, { part }] of resistors.entries()) add(numbered("resistor", resistors.length, i), part);
  add(layoutOf(sketch.layout).selector === "toggle-3" ? "toggle" : "lever", sketch.selector);
  for (const option of sketch.options)
    if (option.kind !== "automatic" && !option.at.onShaft) add(planNameOfSwitch(option.at.part), option.at.part);
  for (const role of ["star", "shield", "claw", "jack"] as const) add(role, sketch[role]);
  return names;
}

const knownSpecs = new WeakMap<Guard, Map<string, PickupSpec>>();

/** A pickup's spec, worked out once for all the plans that are tried on a guard. */
export function specOf(guard: Guard, layoutName: LayoutName, planName: string, name: string): PickupSpec {
  const specs = knownSpecs.get(guard) ?? new Map<string, PickupSpec>();
  knownSpecs.set(guard, specs);
  const key = `${layoutName} ${planName} ${name}`;
  const known = specs.get(key);
  if (known !== undefined) return known;
  const at = positionOf(layoutOf(layoutName), planName, guard.build.strings.scale);
  const written = guard.written.parts[name] as Parameters<typeof pickupSpec>[0];
  const spec = pickupSpec(written, partOf(guard, name, "pickup"), at);
  specs.set(key, spec);
  return spec;
}

function pickupsOf(guard: Guard, sketch: Sketch): PlanInput["pickups"] {
  return Object.fromEntries(
    Object.entries(sketch.pickups).map(([planName, name]) => [planName, specOf(guard, sketch.layout, planName, name)]),
  );
}

const single = <T>(all: T[]): T | T[] | undefined => (all.length === 0 ? undefined : all.length === 1 ? all[0] : all);
const isPlain = (spec: object) => Object.keys(spec).length === 1;

function volumesOf(guard: Guard, sketch: Sketch): Partial<PlanInput> {
  const specs = sketch.volumes.map(({ pot }) => potSpec(guard, pot));
  const short = (spec: (typeof specs)[number]) => (isPlain(spec) ? spec.pot : spec);
  const [first, second] = specs;
  if (!second) return { volume: short(first!) };
  const isUsual = sketch.volumes[0]!.pickup === "neck" && JSON.stringify(first) === JSON.stringify(second);
  if (isUsual) return { volume: short(first!) };
  return { volumes: specs.map((spec, i) => ({ ...spec, pickups: [sketch.volumes[i]!.pickup!] })) };
}

function bleedOf(guard: Guard, { bleed }: Sketch): PlanInput["trebleBleed"] {
  if (!bleed) return undefined;
  const capacitance = valueWritten(guard, bleed.caps.find(Boolean), "1n");
  if (bleed.how === "alone") return { capacitance };
  return { capacitance, [bleed.how]: valueWritten(guard, bleed.resistors.find(Boolean), "150k") };
}

/** Splits whose order decides which pole each takes stay together. */
function optionsOf(sketch: Sketch, naming: Naming, defaultKeeps: (pickup: string) => string): Partial<PlanInput> {
  const { options } = sketch;
  const of = <K extends Option["kind"]>(kind: K) =>
    options.filter((option): option is Extract<Option, { kind: K }> => option.kind === kind);
  const splits = options.flatMap((option) => {
    if (option.kind !== "split" && option.kind !== "automatic") return [];
    const { pickup, keeps } = option;
    const by = option.kind === "split" ? byOf(option.at, naming) : { position: pickup === "neck" ? 4 : 2 };
    return [{ pickup, by, ...(keeps === defaultKeeps(pickup) ? {} : { keeps }) }];
  });
  const placed = <K extends "seriesParallel" | "phase" | "alwaysOn">(kind: K) =>
    (of(kind) as { pickup: string; at: SwitchAt }[]).map(({ pickup, at }) => ({ pickup, by: byOf(at, naming) }));
  const [link] = of("seriesLink");
  const plan = {
    split: single(splits),
    seriesParallel: single(placed("seriesParallel")),
    phase: single(placed("phase")),
    seriesLink: link && { pickups: [...link.pickups] as [string, string], by: byOf(link.at, naming) },
    alwaysOn: placed("alwaysOn")[0],
  };
  return Object.fromEntries(Object.entries(plan).filter(([, value]) => value !== undefined));
}

/** The plan as one would write it: single entries where one will do, what goes without saying left out. */
export function planIn(guard: Guard, sketch: Sketch): PlanInput {
  const naming = { pots: potNames(sketch) };
  const tones = sketch.tones.map(({ pot, cap, pickups }) => ({
    ...potSpec(guard, pot),
    ...(sketch.sharedCap === undefined ? { cap: valueWritten(guard, cap, USUAL_CAP) } : {}),
    ...(pickups.length > 0 ? { pickups: [...pickups] } : {}),
  }));
  const bleed = bleedOf(guard, sketch);
  const firstCoil = (pickup: string) => Object.keys(partOf(guard, sketch.pickups[pickup]!, "pickup").coils)[0]!;
  return {
    layout: sketch.layout,
    pickups: pickupsOf(guard, sketch),
    ...volumesOf(guard, sketch),
    ...(sketch.independent ? { independentVolumes: true } : {}),
    ...(tones.length > 0 ? { tones } : {}),
    ...(sketch.sharedCap === undefined ? {} : { sharedCap: valueWritten(guard, sketch.sharedCap, USUAL_CAP) }),
    ...(tones.length > 0 && sketch.toneFeed === "after-volume" ? { toneFeed: "after-volume" as const } : {}),
    ...(bleed ? { trebleBleed: bleed } : {}),
    ...optionsOf(sketch, naming, firstCoil),
    ...(sketch.resistors.length > 0
      ? {
          resistors: sketch.resistors.map(({ part, across }) => ({
            across: "pickup" in across ? across.pickup : (naming.pots.get(across.pot) ?? across.pot),
            resistance: valueWritten(guard, part, "470k"),
          })),
        }
      : {}),
    ...(sketch.star === undefined ? {} : { grounds: "star" as const }),
    ...(sketch.shield === undefined ? { shield: false } : {}),
  };
}

const asArray = <T>(value: T | T[] | undefined): T[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];

/** A plan made by `planIn` as the schema would read it; every field of it was read with the guard already. */
export function readPlan(plan: PlanInput): Plan {
  const { volume } = plan;
  return {
    independentVolumes: false,
    tones: [],
    toneFeed: "before-volume",
    resistors: [],
    grounds: "cases",
    shield: true,
    ...plan,
    ...(volume === undefined ? {} : { volume: typeof volume === "object" ? volume : { pot: volume } }),
    split: asArray(plan.split),
    seriesParallel: asArray(plan.seriesParallel),
    phase: asArray(plan.phase),
  } as Plan;
}
