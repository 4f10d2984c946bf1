import type { Build, Coil, Part, PartOf, Pickup, Pot } from "../../build-file/schema.ts";
import { coilTolerance, type Tolerance, trackTolerance, valueTolerance } from "../../build-file/tolerances.ts";
import { type Patch, valueAt } from "../variant.ts";
import { type CelsiusRange, driftOf, type Fractions } from "./drift.ts";

/** A value of a build that varies from guard to guard: evenly within its tolerance of what the build says. */
export interface SpreadValue {
  readonly part: string;
  readonly field: string;
  readonly nominal: number;
  /** A fraction, up and, where `under` says no other, down. */
  readonly tolerance: number;
  readonly under?: number;
  /** What the temperature adds, on top. */
  readonly drift?: Fractions;
  /** Whether the tolerance is the customary one because the part names none. */
  readonly isDefault: boolean;
}

type Found = Omit<SpreadValue, "part" | "nominal">;

function varying(field: string, { fraction, under, byDefault }: Tolerance): Found {
  return { field, tolerance: fraction, isDefault: byDefault, ...(under === undefined ? {} : { under }) };
}

function capSpread(cap: PartOf<"cap">, celsius: CelsiusRange | undefined): Found {
  const drift = celsius && driftOf(cap, celsius);
  return { ...varying("capacitance", valueTolerance(cap)), ...(drift ? { drift } : {}) };
}

function potSpread(pot: Pot): Found[] {
  const track = (measured: number | undefined, prefix: string): Found =>
    varying(`${prefix}${measured === undefined ? "resistance" : "measured"}`, trackTolerance(pot, measured));
  return [track(pot.measured, ""), ...(pot.gangs ?? []).map((gang, i) => track(gang.measured, `gangs.${i}.`))];
}

function coilFields(coil: Coil): string[] {
  const loss =
    coil.loss === undefined
      ? []
      : typeof coil.loss === "number"
        ? ["loss"]
        : coil.loss.flatMap(({ inductance }, i) => [
            `loss.${i}.resistance`,
            ...(inductance === undefined ? [] : [`loss.${i}.inductance`]),
          ]);
  return ["resistance", "inductance", ...(coil.capacitance > 0 ? ["capacitance"] : []), ...loss];
}

function pickupSpread(pickup: Pickup): Found[] {
  return Object.entries(pickup.coils).flatMap(([name, coil]) =>
    coilFields(coil).map((field) => varying(`coils.${name}.${field}`, coilTolerance(pickup, coil))),
  );
}

function partSpread(part: Part, celsius: CelsiusRange | undefined): Found[] {
  switch (part.kind) {
    case "pot":
      return potSpread(part);
    case "pickup":
      return pickupSpread(part);
    case "cap":
      return [capSpread(part, celsius)];
    case "resistor":
      return [varying("resistance", valueTolerance(part))];
    case "switch":
    case "jack":
    case "terminal":
      return [];
  }
}

/**
 * Every value of a build that its parts' tolerances let vary. Tapers, magnets (the EMF's size) and the cable do not.
 * @param celsius temperatures that caps of a known dielectric are to be had at; 25 °C where absent
 */
export function spreadOf(build: Build, celsius?: CelsiusRange): SpreadValue[] {
  return Object.entries(build.parts).flatMap(([part, value]) =>
    partSpread(value, celsius).map((found) => ({ ...found, part, nominal: valueAt(build, part, found.field)! })),
  );
}

function drawn({ nominal, tolerance, under = -tolerance, drift }: SpreadValue, uniform: () => number): number {
  const value = nominal * (1 + (tolerance + under) / 2 + ((tolerance - under) / 2) * (2 * uniform() - 1));
  return drift ? value * (1 + drift[0] + (drift[1] - drift[0]) * uniform()) : value;
}

/** One guard's parts drawn from the bins: every value evenly between its tolerance limits, independent of the others. */
export function drawPatches(spread: readonly SpreadValue[], uniform: () => number): Patch[] {
  return spread.map((value) => ({ part: value.part, field: value.field, value: drawn(value, uniform) }));
}
