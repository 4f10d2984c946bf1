import { faultAt } from "../../errors.ts";
import { type CoilInput, PICKUP_TYPE_NAMES, type PickupType, pickupType } from "../catalogue/pickup-types.ts";
import { meansOfShield } from "../means-of-shield.ts";
import { suggestion } from "../nearest.ts";
import { labelOf, type PickupInput, placedCoils } from "../plans/plan-pickups.ts";
import { parseQuantity, QuantityError } from "../quantity.ts";
import type { BuildInput } from "../schema.ts";
import { type LeadRole, type Leads, leadsOf, lugNamesOf, type Orientation, orientationOf } from "./leads.ts";
import { endsOf, WiredTogether, type WireInput } from "./wired-together.ts";

type Guard = Pick<BuildInput, "parts" | "wires">;

export interface PickupSwap {
  /** The new pickup, by its catalogue name. */
  readonly type: string;
  /** Of a new pickup with four leads: the coil nearest the hot lead; absent: the one in the place of the old one's. */
  readonly hotCoil?: string | undefined;
  /** Where one coil replaces two: the coil in whose place it sits; absent: in the middle between them. */
  readonly inPlaceOf?: string | undefined;
}

/** Metres; undefined where none is written, or none that can be read. */
function distanceOf({ distance }: CoilInput): number | undefined {
  if (distance === undefined) return undefined;
  try {
    return parseQuantity(distance, "length").value;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function middleOf({ coils }: PickupInput): number | undefined {
  const known = Object.values(coils)
    .map(distanceOf)
    .filter((each) => each !== undefined);
  return known.length === 0 ? undefined : known.reduce((sum, each) => sum + each, 0) / known.length;
}

function pickupsOf(parts: BuildInput["parts"]): [string, PickupInput][] {
  return Object.entries(parts).filter((entry): entry is [string, PickupInput] => entry[1].kind === "pickup");
}

/** The new pickup's coils where the old one's were; one alone in the place nearest the bridge of three sits aslant. */
function coilsInPlace(parts: BuildInput["parts"], name: string, old: PickupInput, type: PickupType, coil?: string) {
  const distance = coil === undefined ? middleOf(old) : distanceOf(old.coils[coil]!);
  if (distance === undefined) return { ...type.coils };
  const others = pickupsOf(parts).map(([, part]) => middleOf(part) ?? distance);
  const isNearest = others.every((each) => each >= distance);
  const isFarthest = others.length > 1 && others.every((each) => each <= distance);
  const at = { name: isFarthest ? "neck" : name, distance, slanted: isNearest && others.length === 3 };
  return placedCoils({ ...type.coils }, at, type.coilSpacing);
}

/** A label that was made from the old type, made from the new one. */
function newLabel(old: PickupInput, type: PickupType): string | undefined {
  const oldType = old.type === undefined ? undefined : pickupType(old.type);
  const place = old.label?.split(":")[0];
  if (place === undefined || !oldType || old.label !== labelOf(place, oldType)) return old.label;
  return labelOf(place, type);
}

function newPart(
  parts: BuildInput["parts"],
  name: string,
  old: PickupInput,
  type: PickupType,
  inPlaceOf: string | undefined,
): PickupInput {
  const label = newLabel(old, type);
  return {
    kind: "pickup",
    ...(label === undefined ? {} : { label }),
    ...(old.place === undefined ? {} : { place: old.place }),
    type: type.name,
    coils: coilsInPlace(parts, name, old, type, inPlaceOf),
    ...(type.conductors === undefined ? {} : { conductors: type.conductors }),
    ...(type.coupling === undefined ? {} : { coupling: type.coupling }),
    ...(type.metal === undefined ? {} : { metal: type.metal }),
  };
}

/** The wires of the old leads on the new ones; those of leads that the new pickup lacks are taken out. */
function carriedWires(
  wires: readonly WireInput[],
  oldLugs: ReadonlyMap<string, string>,
  roles: ReadonlyMap<string, LeadRole>,
  leads: Leads,
): WireInput[] {
  return wires.flatMap((wire) => {
    const ends = endsOf(wire).map((end) => {
      const lug = oldLugs.get(end);
      if (lug === undefined) return end;
      const role = roles.get(lug);
      return role === undefined ? undefined : leads.get(role);
    });
    const [from, to] = ends;
    if (from === undefined || to === undefined || from === to) return [];
    return ["from" in wire ? { ...wire, from, to } : ([from, to] as [string, string])];
  });
}

/** The metal's way to ground, made as the new pickup has it where it was made as the old one had it. */
function remadeShield(wire: WireInput, name: string, old: PickupInput, part: PickupInput): WireInput {
  const isUsual = "from" in wire && endsOf(wire).includes(`${name}.shield`) && wire.how === meansOfShield(old);
  return isUsual ? { ...wire, how: meansOfShield(part) } : wire;
}

/** A lug that is at ground for good, the place where the pickup's ground lead goes rather than another. */
function groundLug(name: string, wires: readonly WireInput[], ground: string, isGrounded: (lug: string) => boolean) {
  const partners = wires.map(endsOf).flatMap(([from, to]) => (from === ground ? [to] : to === ground ? [from] : []));
  const elsewhere = wires.flatMap(endsOf).filter((lug) => lug.endsWith(".case") && !lug.startsWith(`${name}.`));
  return [...partners, ...elsewhere].find(isGrounded);
}

function knownCoil(path: string, coil: string, { coils }: PickupInput): void {
  if (!Object.hasOwn(coils, coil))
    throw faultAt("BUILD_INVALID", path, `there is no coil "${coil}"${suggestion(coil, Object.keys(coils))}`);
}

function pickupNamed(guard: Guard, name: string): PickupInput {
  const part = guard.parts[name];
  if (part?.kind === "pickup") return part;
  throw faultAt("BUILD_INVALID", `build.parts.${name}`, "expected a pickup");
}

/** The jack's sleeve; in a guard without a jack a lug that nothing is wired to. */
function sleeveOf({ parts }: Guard): string {
  const jack = Object.keys(parts).find((each) => parts[each]!.kind === "jack");
  return `${jack ?? "jack"}.sleeve`;
}

/**
 * Puts a pickup in the place of the one that has its name, and its leads where the old one's were.
 * @param isTurned whether hot and ground trade places; absent: as the old one's do
 */
function withPickup<G extends Guard>(
  guard: G,
  name: string,
  part: PickupInput,
  hotCoil: string | undefined,
  isTurned?: boolean,
): G {
  const old = pickupNamed(guard, name);
  const together = new WiredTogether(guard.wires);
  const sleeve = sleeveOf(guard);
  const before = orientationOf(name, old, together, sleeve);
  const oldLeads = leadsOf(name, old, before);
  const sameCoil = Object.keys(part.coils)[Object.keys(old.coils).indexOf(before.hotCoil ?? "")];
  const leads = leadsOf(name, part, { hotCoil: hotCoil ?? sameCoil, isTurned: isTurned ?? before.isTurned });
  const roles = new Map([...oldLeads].map(([role, lug]) => [lug, role]));
  const wires = carriedWires(guard.wires, lugNamesOf(name, old), roles, leads)
    .filter((wire) => part.metal !== undefined || old.metal === undefined || !endsOf(wire).includes(`${name}.shield`))
    .map((wire) => remadeShield(wire, name, old, part));

  const [upper, lower] = [leads.get("inner, hot coil"), leads.get("inner, ground coil")];
  if (upper && lower && !oldLeads.has("inner, hot coil")) wires.push({ from: upper, to: lower, how: "lead" });
  const shield = leads.get("shield")!;
  const needsGround = part.metal !== undefined && !wires.some((wire) => endsOf(wire).includes(shield));
  const ground = needsGround
    ? groundLug(name, wires, leads.get("ground")!, (lug) => together.has(sleeve, lug))
    : undefined;
  if (ground !== undefined) wires.push({ from: shield, to: ground, how: meansOfShield(part) });
  return { ...guard, parts: { ...guard.parts, [name]: part }, wires };
}

/**
 * A guard with another pickup in one's place and the wires carried over: hot to the new hot lead, ground to the far end, inner
 * leads joined, metal to ground. The guard need not be readable.
 * @throws PresolderError BUILD_INVALID where there is no such pickup, type or coil
 */
export function swapPickup<G extends Guard>(guard: G, name: string, swap: PickupSwap): G {
  const old = pickupNamed(guard, name);
  const type = pickupType(swap.type);
  if (!type) {
    const hint = suggestion(swap.type, PICKUP_TYPE_NAMES);
    throw faultAt("BUILD_INVALID", "type", `there is no pickup type "${swap.type}"${hint}`);
  }
  if (swap.inPlaceOf !== undefined) knownCoil("inPlaceOf", swap.inPlaceOf, old);
  const part = newPart(guard.parts, name, old, type, swap.inPlaceOf);
  if (swap.hotCoil !== undefined) knownCoil("hotCoil", swap.hotCoil, part);
  return withPickup(guard, name, part, swap.hotCoil);
}

/**
 * A guard with a pickup of a person's own in one's place, its leads where the old one's were.
 * @param own a catalogue type with values of its own
 * @param isTurned whether hot and ground trade places; absent, as the hot coil: as the old one has it
 * @throws PresolderError BUILD_INVALID where there is no such pickup
 */
export function putPickup<G extends Guard>(
  guard: G,
  name: string,
  own: PickupType,
  { hotCoil, isTurned }: Partial<Orientation>,
): G {
  const part = newPart(guard.parts, name, pickupNamed(guard, name), own, undefined);
  return withPickup(guard, name, part, hotCoil, isTurned);
}

/** The coil of a pickup with four leads that a guard has at the hot end; undefined for one with two. */
export function hotCoilIn(guard: Guard, name: string): string | undefined {
  const pickup = pickupNamed(guard, name);
  return orientationOf(name, pickup, new WiredTogether(guard.wires), sleeveOf(guard)).hotCoil;
}

/**
 * The same pickup with its other coil at the hot end, and every wire with it.
 * @throws PresolderError BUILD_INVALID where there is no such pickup or coil
 */
export function turnPickup<G extends Guard>(guard: G, name: string, hotCoil: string): G {
  const pickup = pickupNamed(guard, name);
  knownCoil("hotCoil", hotCoil, pickup);
  return withPickup(guard, name, pickup, hotCoil);
}
