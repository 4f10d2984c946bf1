import type { Build, Coil, Part, Pickup, Pot } from "../../build-file/schema.ts";
import { type Patch, valueAt } from "../variant.ts";

/** Customary tolerances where a part names none (common practice, no source). */
export const DEFAULT_TOLERANCES = { pot: 0.2, cap: 0.1, resistor: 0.05, pickup: 0.05 } as const;
/** A value that somebody measured is as good as the meter: about 1 % (common practice, no source). */
export const MEASURED_TOLERANCE = 0.01;

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

function potSpread(pot: Pot): Found[] {
  const isDefault = pot.tolerance === undefined;
  const tolerance = pot.tolerance ?? DEFAULT_TOLERANCES.pot;
  const track = (measured: number | undefined, prefix: string): Found =>
    measured === undefined
      ? { field: `${prefix}resistance`, tolerance, isDefault }
      : { field: `${prefix}measured`, tolerance: MEASURED_TOLERANCE, isDefault: false };
  return [track(pot.measured, ""), ...(pot.gangs ?? []).map((gang, i) => track(gang.measured, `gangs.${i}.`))];
}

function coilFields(coil: Coil): string[] {
  const loss =
    coil.loss === undefined
      ? []
      : typeof coil.loss === "number"
        ? ["loss"]
        : coil.loss.flatMap((_, i) => [`loss.${i}.resistance`, `loss.${i}.inductance`]);
  return ["resistance", "inductance", ...(coil.capacitance > 0 ? ["capacitance"] : []), ...loss];
}

function pickupSpread(pickup: Pickup): Found[] {
  return Object.entries(pickup.coils).flatMap(([name, coil]) => {
    const given = coil.tolerance ?? pickup.tolerance;
    const tolerance = given ?? DEFAULT_TOLERANCES.pickup;
    return coilFields(coil).map((field) => ({
      field: `coils.${name}.${field}`,
      tolerance,
      isDefault: given === undefined,
    }));
  });
}

function partSpread(part: Part): Found[] {
  switch (part.kind) {
    case "pot":
      return potSpread(part);
    case "pickup":
      return pickupSpread(part);
    case "cap":
    case "resistor": {
      const field = part.kind === "cap" ? "capacitance" : "resistance";
      const tolerance = part.tolerance ?? DEFAULT_TOLERANCES[part.kind];
      return [{ field, tolerance, isDefault: part.tolerance === undefined }];
    }
    default:
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
