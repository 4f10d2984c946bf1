import type { Coil, Part, PartOf, Pickup } from "../build-file/schema.ts";
import type { SwitchSpec } from "../build-file/switch-types.ts";
import { coilTolerance, DEFAULT_TOLERANCES, type Tolerance, valueTolerance } from "../build-file/tolerances.ts";

/** What may be taken for a wanted part: a part, and what this one was measured as. */
export interface Offered {
  readonly part: Part;
  readonly measured?: number | undefined;
}

/** Two printed values are one where they differ by less than a printed code tells apart: 0.022 µF and 22 nF. */
const SAME_PRINT = 0.01;
/** What a part is the worse for that does more than is asked of it, beside deviations of a value, which stay under 1. */
const MORE_THAN_WANTED = 1;

const isSame = (a: unknown, b: unknown) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/**
 * How far a value is from the one wanted, as a fraction; null where it does not serve. A measured one serves within the wanted
 * part's tolerance; of one that nobody measured only its print is known, which must be the wanted one.
 */
function valueMisfit(
  wanted: number,
  { fraction, under }: Tolerance,
  printed: number,
  measured?: number,
): number | null {
  const off = (measured ?? printed) / wanted - 1;
  if (measured === undefined) return Math.abs(off) <= SAME_PRINT ? Math.abs(off) : null;
  // What rounding leaves of a value right on the bound does not count against it.
  const slack = 1e-9;
  return off <= fraction + slack && off >= (under ?? -fraction) - slack ? Math.abs(off) : null;
}

function capMisfit(wanted: PartOf<"cap">, cap: PartOf<"cap">, measured?: number): number | null {
  if (wanted.dielectric !== undefined && wanted.dielectric !== cap.dielectric) return null;
  return valueMisfit(wanted.capacitance, valueTolerance(wanted), cap.capacitance, measured);
}

const shaftOf = ({ type, centre, poles, throws, positions }: SwitchSpec) => [type, centre, poles, throws, positions];

function isSameSwitch(a: SwitchSpec | undefined, b: SwitchSpec | undefined): boolean {
  return a === undefined || b === undefined ? a === b : isSame(shaftOf(a), shaftOf(b));
}

function potMisfit(wanted: PartOf<"pot">, pot: PartOf<"pot">, measured?: number): number | null {
  const alike =
    isSame(wanted.taper, pot.taper) &&
    wanted.noLoad === pot.noLoad &&
    isSame(wanted.gangs?.map(gangOf), pot.gangs?.map(gangOf));
  if (!alike) return null;
  const fraction = wanted.tolerance ?? DEFAULT_TOLERANCES.pot;
  const tolerance = { fraction, byDefault: wanted.tolerance === undefined };
  const shown = measured ?? pot.measured;
  const offNominal = valueMisfit(wanted.resistance, tolerance, pot.resistance, shown);
  if (offNominal === null) return null;
  // A guard that says what its pot measures holds that very pot; another comes as near to it as it can.
  const misfit = wanted.measured === undefined ? offNominal : Math.abs((shown ?? pot.resistance) / wanted.measured - 1);
  if (isSameSwitch(wanted.drives, pot.drives)) return misfit;
  return wanted.drives === undefined ? misfit + MORE_THAN_WANTED : null;
}

const gangOf = ({ resistance, taper }: { resistance: number; taper: unknown }) => [resistance, taper];

const isWithin = (wanted: number, value: number, fraction: number) =>
  Math.abs(value - wanted) <= (fraction + 1e-9) * Math.abs(wanted);

/** The largest deviation of a coil's resistance and inductance, within the wanted coil's tolerance; null where it is another. */
function coilMisfit(wanted: Coil, tolerance: number, coil: Coil): number | null {
  if (wanted.winding !== coil.winding || wanted.magnet !== coil.magnet) return null;
  const values = (["resistance", "inductance"] as const).map((field) => [wanted[field], coil[field]] as const);
  if (!values.every(([a, b]) => isWithin(a, b, tolerance))) return null;
  return Math.max(...values.map(([a, b]) => Math.abs(b / a - 1)));
}

const leadsOf = (pickup: Pickup) => (Object.keys(pickup.coils).length === 1 ? 2 : (pickup.conductors ?? 4));

function pickupMisfit(wanted: Pickup, pickup: Pickup): number | null {
  const [coils, offered] = [Object.values(wanted.coils), Object.values(pickup.coils)];
  if (coils.length !== offered.length || leadsOf(wanted) > leadsOf(pickup)) return null;
  if (wanted.type !== undefined && pickup.type !== undefined && wanted.type !== pickup.type) return null;
  const misfits = coils.map((coil, i) => coilMisfit(coil, coilTolerance(wanted, coil).fraction, offered[i]!));
  if (misfits.includes(null)) return null;
  return Math.max(...(misfits as number[])) + (leadsOf(wanted) < leadsOf(pickup) ? MORE_THAN_WANTED : 0);
}

/**
 * How ill a part suits as the wanted one, 0 for exactly; null where it does not serve. Tolerances are fractions: the wanted
 * part's own, else the customary ones of its kind.
 */
export function misfitOf(wanted: Part, { part, measured }: Offered): number | null {
  switch (wanted.kind) {
    case "cap":
      return part.kind === "cap" ? capMisfit(wanted, part, measured) : null;
    case "resistor":
      return part.kind === "resistor"
        ? valueMisfit(wanted.resistance, valueTolerance(wanted), part.resistance, measured)
        : null;
    case "pot":
      return part.kind === "pot" ? potMisfit(wanted, part, measured) : null;
    case "switch":
      return part.kind === "switch" && isSameSwitch(wanted, part) ? 0 : null;
    case "jack":
      if (part.kind !== "jack" || (wanted.stereo && !part.stereo)) return null;
      return part.stereo && !wanted.stereo ? MORE_THAN_WANTED : 0;
    case "pickup":
      return part.kind === "pickup" ? pickupMisfit(wanted, part) : null;
    case "terminal":
      return null;
  }
}
