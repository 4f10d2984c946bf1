import { type CoilInput, PICKUP_TYPES, type PickupType, pickupType } from "../catalogue/pickup-types.ts";
import { coilSchema } from "../part-schemas.ts";
import { millimetres } from "../plans/places.ts";
import { type PickupInput, type Position, placedCoils, USUAL_SPACING } from "../plans/plan-pickups.ts";
import type { PlanInput } from "../plans/plan-schema.ts";
import { parseQuantity } from "../quantity.ts";
import type { Coil, Pickup } from "../schema.ts";
import { same } from "./same.ts";

export type PickupSpec = PlanInput["pickups"][string];
type Fields = Record<string, unknown>;

const coilsOfType = new Map<string, Record<string, Coil>>();

/** The values of a catalogue type's coils, read once. */
function readCoils(type: PickupType): Record<string, Coil> {
  const known = coilsOfType.get(type.name);
  if (known) return known;
  const read = Object.fromEntries(Object.entries(type.coils).map(([name, coil]) => [name, coilSchema.parse(coil)]));
  coilsOfType.set(type.name, read);
  return read;
}

/** Closer than a tenth of a millimetre, to which places are rounded. */
const isNear = (a: number, b: number) => Math.abs(a - b) < 5e-5;
const metres = (length: number | string) => parseQuantity(length, "length").value;

/** What the places of a pickup's coils add to its plan: nothing, its own distance, or one for each coil. */
interface Places {
  readonly distance?: number | string;
  readonly coils: Readonly<Record<string, Fields>>;
}

function distancesAre(coils: readonly (readonly [string, Coil])[], expected: Record<string, CoilInput>): boolean {
  return coils.every(
    ([name, { distance }]) => distance === undefined || isNear(distance, metres(expected[name]!.distance!)),
  );
}

function distancesOf(written: PickupInput, part: Pickup, at: Position, spacing: string | undefined): Places {
  const coils = Object.entries(part.coils);
  const bare = Object.fromEntries(coils.map(([name]) => [name, {} as CoilInput]));
  if (distancesAre(coils, placedCoils(bare, at, spacing))) return { coils: {} };
  const known = coils.flatMap(([, { distance }]) => (distance === undefined ? [] : [distance]));
  const middle = known.reduce((sum, distance) => sum + distance, 0) / known.length;
  const asWhole = distancesAre(coils, placedCoils(bare, { ...at, distance: middle }, spacing));
  const [first] = Object.values(written.coils);
  if (asWhole && known.length === coils.length)
    return { distance: coils.length === 1 ? first!.distance! : millimetres(middle), coils: {} };
  const own = Object.entries(written.coils).filter(([, { distance }]) => distance !== undefined);
  return { coils: Object.fromEntries(own.map(([name, { distance }]) => [name, { distance }])) };
}

/** A coil without a place is anywhere, and then nothing is said of its slant either. */
function slantChange(written: CoilInput, coil: Coil, expected: number): Fields {
  if (coil.slant === undefined && coil.distance === undefined) return {};
  if (isNear(coil.slant ?? 0, expected)) return {};
  return { slant: written.slant ?? 0 };
}

function expectedSlant(part: Pickup, at: Position): number {
  const bare = Object.fromEntries(Object.keys(part.coils).map((name) => [name, {} as CoilInput]));
  const [first] = Object.values(placedCoils(bare, at, undefined));
  return first?.slant === undefined ? 0 : metres(first.slant);
}

const VALUES = [
  "resistance",
  "inductance",
  "capacitance",
  "loss",
  "shielding",
  "winding",
  "magnet",
  "output",
  "aperture",
  "tolerance",
] as const;

/** No metal is an empty list, so that a plan can take away its type's. */
const withMetals = (coil: Coil) => ({ ...coil, shielding: [coil.shielding ?? []].flat() });

/** The fields in which a coil differs from its type's; undefined where it lacks one, which no change can take away. */
function valueChanges(asWritten: CoilInput, asRead: Coil, type: Coil): Fields | undefined {
  const [coil, ofType] = [withMetals(asRead), withMetals(type)];
  const written = { ...asWritten, shielding: asWritten.shielding ?? [] };
  const changed = VALUES.filter((field) => !same(coil[field], ofType[field]));
  if (changed.some((field) => coil[field] === undefined)) return undefined;
  return Object.fromEntries(changed.map((field) => [field, written[field] ?? coil[field]]));
}

const conductorsOf = (pickup: { conductors?: 2 | 4 | undefined; coils: object }) =>
  Object.keys(pickup.coils).length === 2 ? (pickup.conductors ?? 4) : undefined;

/** Of the pickup as a whole: what differs from its type's. */
function commonChanges(part: Pickup, type: PickupType): Fields | undefined {
  if (part.tolerance !== undefined) return undefined;
  const conductors = conductorsOf(part);
  return {
    ...(conductors === conductorsOf(type) ? {} : { conductors }),
    ...((part.coupling ?? 0) === (type.coupling ?? 0) ? {} : { coupling: part.coupling ?? 0 }),
    ...((part.metal ?? "none") === (type.metal ?? "none") ? {} : { metal: part.metal ?? "none" }),
  };
}

/** What a plan has to change about a catalogue type to get this pickup; undefined where it cannot. */
function changesTo(type: PickupType, written: PickupInput, part: Pickup, at: Position): Fields | undefined {
  const names = Object.keys(part.coils);
  if (!same(names, Object.keys(type.coils))) return undefined;
  const common = commonChanges(part, type);
  if (!common) return undefined;
  const places = distancesOf(written, part, at, type.coilSpacing);
  const slant = expectedSlant(part, at);
  const coils: Record<string, Fields> = {};
  for (const name of names) {
    const [asWritten, coil] = [written.coils[name]!, part.coils[name]!];
    const values = valueChanges(asWritten, coil, readCoils(type)[name]!);
    if (!values) return undefined;
    const all = { ...values, ...places.coils[name], ...slantChange(asWritten, coil, slant) };
    if (Object.keys(all).length > 0) coils[name] = all;
  }
  return {
    ...common,
    ...(places.distance === undefined ? {} : { distance: places.distance }),
    ...(Object.keys(coils).length > 0 ? { coils } : {}),
  };
}

/** The pickup as a whole part, without what a plan gives it by itself. */
function wholeSpec(written: PickupInput, part: Pickup, at: Position): PickupSpec {
  const { label: _label, place: _place, coils, ...rest } = written;
  const spacing = Object.keys(coils).length === 2 ? USUAL_SPACING : undefined;
  const usual = distancesOf(written, part, at, spacing);
  const isUsual = usual.distance === undefined && Object.keys(usual.coils).length === 0;
  const expected = expectedSlant(part, at);
  const bare = Object.entries(coils).map(([name, { distance, slant: _slant, ...values }]) => [
    name,
    {
      ...values,
      ...(isUsual || distance === undefined ? {} : { distance }),
      ...slantChange(coils[name]!, part.coils[name]!, expected),
    },
  ]);
  return { ...rest, coils: Object.fromEntries(bare) };
}

/**
 * How a plan would name a pickup in its position: the catalogue type where the values are its own, the type with changes where
 * some differ, else the whole part. A coil without a distance lies at the usual one.
 */
export function pickupSpec(written: PickupInput, part: Pickup, at: Position): PickupSpec {
  const named = pickupType(part.type ?? "");
  const changes = named && changesTo(named, written, part, at);
  if (named && changes) return Object.keys(changes).length === 0 ? named.name : { type: named.name, ...changes };
  const equal = PICKUP_TYPES.find((type) => same(changesTo(type, written, part, at), {}));
  return equal ? equal.name : wholeSpec(written, part, at);
}
