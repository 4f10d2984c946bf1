import type { Build, Coil, Part, Pickup, Pot } from "../../build-file/schema.ts";
import { coilTolerance, type Tolerance, trackTolerance, valueTolerance } from "../../build-file/tolerances.ts";
import { type Patch, valueAt } from "../variant.ts";

/** A value of a build that varies from guard to guard: evenly within ± tolerance of what the build says. */
export interface SpreadValue {
  readonly part: string;
  readonly field: string;
  readonly nominal: number;
  readonly tolerance: number;
  /** Whether the tolerance is the customary one because the part names none. */
  readonly isDefault: boolean;
}

type Found = Omit<SpreadValue, "part" | "nominal">;

function varying(field: string, { fraction, byDefault }: Tolerance): Found {
  return { field, tolerance: fraction, isDefault: byDefault };
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

function partSpread(part: Part): Found[] {
  switch (part.kind) {
    case "pot":
      return potSpread(part);
    case "pickup":
      return pickupSpread(part);
    case "cap":
      return [varying("capacitance", valueTolerance(part))];
    case "resistor":
      return [varying("resistance", valueTolerance(part))];
    case "switch":
    case "jack":
    case "terminal":
      return [];
  }
}

/** Every value of a build that its parts' tolerances let vary. Tapers, magnets (the EMF's size) and the cable do not. */
export function spreadOf(build: Build): SpreadValue[] {
  return Object.entries(build.parts).flatMap(([part, value]) =>
    partSpread(value).map((found) => ({ ...found, part, nominal: valueAt(build, part, found.field)! })),
  );
}

/** One guard's parts drawn from the bins: every value evenly between its tolerance limits, independent of the others. */
export function drawPatches(spread: readonly SpreadValue[], uniform: () => number): Patch[] {
  return spread.map(({ part, field, nominal, tolerance }) => ({
    part,
    field,
    value: nominal * (1 + tolerance * (2 * uniform() - 1)),
  }));
}
