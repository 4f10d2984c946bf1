import { capitalised } from "../../english.ts";
import { type CoilInput, type PickupType, pickupType } from "../catalogue/pickup-types.ts";
import { hasCoilLeads } from "../lug-names.ts";
import { suggestion } from "../nearest.ts";
import { parseQuantity } from "../quantity.ts";
import type { Draft, PartInput } from "./draft.ts";
import type { Layout } from "./layouts.ts";
import { BRIDGE_SLANT, millimetres, pickupDistance, rounded } from "./places.ts";
import { planFault } from "./plan-fault.ts";
import type { Plan, PlanPickup } from "./plan-schema.ts";

export type PickupInput = Extract<PartInput, { kind: "pickup" }>;

/** The lugs at which a pickup's signal can be taken; options such as a phase switch move them outwards. */
export interface Tap {
  readonly pickup: string;
  hot: string;
  ground: string;
  /** Where the hot side comes on the pickup's own lead. */
  hotIsLead: boolean;
  groundIsLead: boolean;
  /** With four conductors: the two leads between the coils, hot side first. */
  readonly link: readonly [string, string] | undefined;
}

interface ChangedType {
  readonly type: string;
  readonly coils?: Readonly<Record<string, object>> | undefined;
}

/** The type's coils with the plan's changes laid over them. */
function changedCoils(path: string, plan: ChangedType, type: PickupType): Record<string, CoilInput> {
  const changes = plan.coils ?? {};
  const unknown = Object.keys(changes).find((coil) => !(coil in type.coils));
  if (unknown !== undefined) {
    const hint = suggestion(unknown, Object.keys(type.coils));
    throw planFault(`${path}.coils.${unknown}`, `${type.name} has no such coil${hint}`);
  }
  return Object.fromEntries(
    Object.entries(type.coils).map(([coil, values]) => [coil, { ...values, ...definedOf(changes[coil] ?? {}) }]),
  );
}

function definedOf<T extends object>(values: T): Partial<T> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Partial<T>;
}

/** A pickup's place: metres from the bridge to its middle, and whether one coil alone sits aslant there. */
export interface Position {
  readonly name: string;
  readonly distance: number;
  readonly slanted: boolean;
}

export function positionOf(layout: Layout, name: string, scaleMetres: number): Position {
  const slanted = name === "bridge" && layout.pickups.length === 3;
  return { name, distance: pickupDistance(layout, name, scaleMetres), slanted };
}

/** Each coil's distance from the bridge; the coil with the screws lies outermost, and one coil alone may sit aslant. */
export function placedCoils(coils: Record<string, CoilInput>, at: Position, spacing: string | undefined) {
  const half = spacing === undefined ? 0 : parseQuantity(spacing, "length").value / 2;
  const outward = at.name === "neck" ? 1 : -1;
  const isSlanted = at.slanted && Object.keys(coils).length === 1;
  return Object.fromEntries(
    Object.entries(coils).map(([name, coil], index) => {
      const offset = half * outward * (index === 0 ? -1 : 1);
      const distance = coil.distance ?? millimetres(rounded(at.distance + offset));
      const slant = coil.slant ?? (isSlanted ? BRIDGE_SLANT : undefined);
      return [name, { ...coil, distance, ...(slant === undefined ? {} : { slant }) }];
    }),
  );
}

/** What a pickup of the catalogue is called in its place. */
export function labelOf(place: string, type: PickupType): string {
  return `${place}: ${decapitalised(type.title)}`.slice(0, 80);
}

function fromCatalogue(position: string, plan: Exclude<PlanPickup, { kind: "pickup" }>, at: Position): PickupInput {
  const changes = typeof plan === "string" ? { type: plan } : plan;
  const type = pickupType(changes.type)!;
  const coils = changedCoils(`pickups.${position}`, changes, type);
  const distance = changes.distance === undefined ? at.distance : parseQuantity(changes.distance, "length").value;
  const conductors = changes.conductors ?? type.conductors;
  const coupling = changes.coupling ?? type.coupling;
  const metal = changes.metal ?? type.metal;
  return {
    kind: "pickup",
    label: changes.label ?? labelOf(capitalised(position), type),
    type: type.name,
    coils: placedCoils(coils, { ...at, distance }, type.coilSpacing),
    ...(conductors === undefined ? {} : { conductors }),
    ...(coupling === undefined ? {} : { coupling }),
    ...(metal === undefined ? {} : { metal }),
  };
}

export const USUAL_SPACING = "18mm";

function placedWhole(part: PickupInput, at: Position): PickupInput {
  const spacing = Object.keys(part.coils).length === 2 ? USUAL_SPACING : undefined;
  return { ...part, coils: placedCoils(part.coils, at, spacing) };
}

function decapitalised(title: string): string {
  return title.charAt(0).toLowerCase() + title.slice(1);
}

type Sign = Pick<CoilInput, "winding" | "magnet">;
/** Whether the strings' signal rises from the coil's finish to its start. */
export const isReversed = (coil: Sign) => (coil.winding === "reverse") !== (coil.magnet === "south");

/** A pickup as drawn up, with the taps that bring its signal out. `hotCoil` is the coil to lie nearest the hot lead. */
export function tapOf(name: string, pickup: PickupInput, hotCoil: string | undefined): Tap {
  const coils = Object.entries(pickup.coils);
  const plain = { pickup: name, hotIsLead: true, groundIsLead: true };
  if (!hasCoilLeads(pickup)) return { ...plain, hot: `${name}.hot`, ground: `${name}.ground`, link: undefined };
  const ordered = [...coils].sort(([a], [b]) => Number(b === hotCoil) - Number(a === hotCoil));
  // Each coil is turned so that its strings' signal rises towards the hot lead: the coils aid, and split ones stay in phase.
  const [upper, lower] = ordered.map(([coil, values]) => {
    const [towardsHot, towardsGround] = isReversed(values) ? ["start", "finish"] : ["finish", "start"];
    return { hot: `${name}.${coil}.${towardsHot}`, ground: `${name}.${coil}.${towardsGround}` };
  });
  return { ...plain, hot: upper!.hot, ground: lower!.ground, link: [upper!.ground, lower!.hot] };
}

function checkedNames(plan: Plan, layout: Layout): void {
  for (const name of Object.keys(plan.pickups)) {
    if (!layout.pickups.includes(name) && layout.selector !== "none")
      throw planFault(
        `pickups.${name}`,
        `the layout ${plan.layout} has no such pickup${suggestion(name, layout.pickups)}`,
      );
  }
  const count = Object.keys(plan.pickups).length;
  if (layout.selector === "none") {
    if (count !== 1) throw planFault("pickups", `has ${count} pickups; expected exactly one`);
    return;
  }
  const missing = layout.pickups.find((name) => !(name in plan.pickups));
  if (missing !== undefined)
    throw planFault("pickups", `has no "${missing}"; expected ${layout.pickups.map((name) => `"${name}"`).join(", ")}`);
}

/** The names of a plan's pickups, from the bridge to the neck. */
export function pickupNames(plan: Plan, layout: Layout): readonly string[] {
  return layout.selector === "none" ? Object.keys(plan.pickups) : layout.pickups;
}

/** Draws up the pickups, neck first, and returns their taps by name. */
export function addPickups(draft: Draft, plan: Plan, layout: Layout, scaleMetres: number): Map<string, Tap> {
  checkedNames(plan, layout);
  const taps = new Map<string, Tap>();
  for (const name of [...pickupNames(plan, layout)].reverse()) {
    const spec = plan.pickups[name]!;
    const whole = typeof spec !== "string" && "kind" in spec;
    const at = positionOf(layout, name, scaleMetres);
    const part = whole ? placedWhole(spec as PickupInput, at) : fromCatalogue(name, spec, at);
    draft.part(name, { ...part, place: part.place ?? { x: at.distance, y: 0 } });
    const keeps = plan.split.find((split) => split.pickup === name)?.keeps;
    taps.set(name, tapOf(name, part, keeps));
  }
  return taps;
}
