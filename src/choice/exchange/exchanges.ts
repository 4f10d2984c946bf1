import { pickupType } from "../../build-file/catalogue/pickup-types.ts";
import { USUAL_SPACING } from "../../build-file/plans/plan-pickups.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build, BuildInput, Part, PartOf, Pickup, Pot } from "../../build-file/schema.ts";
import { putPickup } from "../../build-file/swap/swap-pickup.ts";
import type { OwnedPart } from "../../drawer/drawer-schema.ts";
import { BLEED_FARADS, isIn, TONE_FARADS } from "../buildable/variants.ts";

const leadsOf = ({ coils, conductors }: Pickup) => (Object.keys(coils).length === 1 ? 2 : (conductors ?? 4));
const isSame = (a: unknown, b: unknown) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/** The shaft's switch and the second gang stay: wires are on their lugs. */
function potInPlace(old: Pot, part: Pot): Pot | null {
  if (part.gangs || old.gangs || (old.drives && !isSame(old.drives.type, part.drives?.type))) return null;
  const { resistance, taper, midpoint, measured, noLoad, endResistance, angles, tolerance } = part;
  const { midpoint: _midpoint, measured: _measured, angles: _angles, tolerance: _tolerance, ...kept } = old;
  return {
    ...kept,
    resistance,
    taper,
    noLoad,
    endResistance,
    ...(midpoint === undefined ? {} : { midpoint }),
    ...(measured === undefined ? {} : { measured }),
    ...(angles === undefined ? {} : { angles }),
    ...(tolerance === undefined ? {} : { tolerance }),
  };
}

/** A tone cap for a tone cap, a bleed for a bleed; any for one that is neither by its value. */
function isOfSameUse({ capacitance: old }: PartOf<"cap">, { capacitance }: PartOf<"cap">): boolean {
  const uses = [TONE_FARADS, BLEED_FARADS].filter((use) => isIn(use, old));
  return uses.length === 0 || uses.some((use) => isIn(use, capacitance));
}

/** Another value where the old one sat. */
function inPlaceOf(old: Part, { label: _label, place: _place, ...part }: PartOf<"cap"> | PartOf<"resistor">): Part {
  return {
    ...part,
    ...(old.label === undefined ? {} : { label: old.label }),
    ...(old.place === undefined ? {} : { place: old.place }),
  };
}

function withPart(build: Build, name: string, part: Part): Build {
  return { ...build, parts: { ...build.parts, [name]: part } };
}

/** The new pickup's leads go where the old one's were, so it must have as many. */
function withPickup(build: Build, name: string, old: Pickup, part: Pickup): Build | null {
  const alike = Object.keys(old.coils).length === Object.keys(part.coils).length && leadsOf(old) === leadsOf(part);
  if (!alike) return null;
  const bare = Object.entries(part.coils).map(([coil, { distance: _distance, slant: _slant, ...values }]) => [
    coil,
    values,
  ]);
  const type = part.type === undefined ? undefined : pickupType(part.type);
  const coilSpacing = type ? type.coilSpacing : bare.length === 2 ? USUAL_SPACING : undefined;
  const own = {
    name: part.type ?? "",
    title: part.label ?? type?.title ?? "",
    basis: "",
    usualPot: "",
    coils: Object.fromEntries(bare),
    ...(coilSpacing === undefined ? {} : { coilSpacing }),
    ...(part.conductors === undefined ? {} : { conductors: part.conductors }),
    ...(part.coupling === undefined ? {} : { coupling: part.coupling }),
    ...(part.metal === undefined ? {} : { metal: part.metal }),
  } as unknown as Parameters<typeof putPickup>[2];
  const put = putPickup(build as unknown as BuildInput, name, own, {});
  const { type: _type, ...untyped } = put.parts[name] as Extract<BuildInput["parts"][string], { kind: "pickup" }>;
  return readBuild(part.type === undefined ? { ...put, parts: { ...put.parts, [name]: untyped } } : put);
}

/**
 * The guard with another part in one's place and every wire where it was; null where its lugs are not the same, or where nothing
 * would be another.
 * @throws PresolderError BUILD_INVALID where the guard cannot be read with it
 */
export function exchanged(build: Build, name: string, part: OwnedPart): Build | null {
  const old = build.parts[name];
  if (old?.kind === "pickup" && part.kind === "pickup") return withPickup(build, name, old, part);
  if (old?.kind === "pot" && part.kind === "pot") {
    const pot = potInPlace(old, part);
    return pot && !isSame(pot, old) ? withPart(build, name, pot) : null;
  }
  if (old?.kind === "cap" && part.kind === "cap")
    return isOfSameUse(old, part) ? withPart(build, name, inPlaceOf(old, part)) : null;
  if (old?.kind === "resistor" && part.kind === "resistor") return withPart(build, name, inPlaceOf(old, part));
  return null;
}
