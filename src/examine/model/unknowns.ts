import { type EndRange, endRangeOf } from "../../build-file/end-resistance.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Coil, Pickup, Pot } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { wiperFraction } from "../../build-file/taper.ts";
import { spreadOf } from "../../choice/tolerance/spread.ts";

/** Something of a guard that its drawing does not fix: normal about 0, as a logarithm, a logit or a share by its `law`. */
export interface Unknown {
  /** A part's name; "" for what belongs to the rig. */
  readonly part: string;
  /** As in the build file; `eddy…`, `wiper…` and `end…` are not in it. */
  readonly field: string;
  readonly law: "log" | "logit" | "share";
  /** Standard deviation before anything was recorded. */
  readonly deviation: number;
  /** Where 0 lies, as ln of a multiple of what is drawn: off 0 where a tolerance goes further one way than the other. */
  readonly centre?: number;
  /** As a part's data name it, a fraction; 0 where the unknown is none of a part's values. */
  readonly tolerance: number;
}

/** Evenly between two bounds is as wide as a normal law of this share of half their distance. */
const EVEN = 1 / Math.sqrt(3);
/**
 * What is known of a coil from its type alone beyond its tolerance: the winding's capacitance takes in its leads, and eddy
 * currents scatter with metal that nobody describes (common practice, no source).
 */
const CAPACITANCE_DEVIATION = 0.3;
const LOSS_DEVIATION = 0.25;
/** Eddy currents that the drawn coil's sections do not hold, a share of its inductance: with and without sections of its own. */
const EDDY_DEVIATION = { drawn: 0.03, none: 0.12 } as const;
const COUPLING_DEVIATION = 0.2;
/** Audio tracks differ, and nobody sets a knob to a line exactly: logit of the wiper's fraction (common practice, no source). */
const WIPER_DEVIATION = 0.35;

const EDDY_COUNT = 2;

/** The least deviation of a coil's value, whatever its tolerance. */
function leastOf(field: string): number {
  if (/\.capacitance$/.test(field)) return CAPACITANCE_DEVIATION;
  return /\.loss(\.|$)/.test(field) ? LOSS_DEVIATION : 0;
}

function values(build: Build): Unknown[] {
  return spreadOf(build).map(({ part, field, tolerance, under = -tolerance }) => {
    const wide = (tolerance - under) / 2;
    const isCoil = field.startsWith("coils.");
    const middle = 1 + (tolerance + under) / 2;
    const deviation = Math.max((wide / middle) * EVEN, isCoil ? leastOf(field) : 0, 1e-3);
    return {
      part,
      field,
      law: "log",
      deviation,
      tolerance: wide,
      ...(middle === 1 ? {} : { centre: Math.log(middle) }),
    };
  });
}

function eddies(part: string, name: string, { loss }: Coil): Unknown[] {
  const deviation = loss === undefined ? EDDY_DEVIATION.none : EDDY_DEVIATION.drawn;
  return Array.from({ length: EDDY_COUNT }, (_, index) => ({
    part,
    field: `coils.${name}.eddy${index}`,
    law: "share",
    deviation,
    tolerance: 0,
  }));
}

function ofPickup(part: string, { coils, coupling }: Pickup): Unknown[] {
  const coupled: Unknown[] = coupling
    ? [{ part, field: "coupling", law: "log", deviation: COUPLING_DEVIATION, tolerance: 0 }]
    : [];
  return [...Object.entries(coils).flatMap(([name, coil]) => eddies(part, name, coil)), ...coupled];
}

/** How many times what is drawn a part's value is, its unknown being there. */
export const multipleAt = ({ centre = 0 }: Unknown, value: number): number => Math.exp(centre + value);

/** The field of a wiper's place on a gang's track at a dial, and of what is left at the track's end. */
export const wiperField = (gang: number, dial: number) => `wiper${gang}@${dial}`;
export const endField = (gang: number, end: "low" | "high", dial: number) =>
  dial === 0 || dial === 10 ? `end${gang}.${end}` : `end${gang}.${end}@${dial}`;

/** Where a track stays at its end over part of the turn, a hand may leave it by some hundredths of it (common practice, no source). */
const MID_TURN_SHARE = 0.08;
/** Data sheets bound ends as a share of a track that may itself be a fifth larger, and old pots are worse. */
const END_SLACK = 1.5;
/** About what a person measured. */
const MEASURED_SLACK = 1.2;

/** Between what ohms the end of a track lies, evenly on a log scale; its unknown is normal, and its probability the place between. */
export function endLaw(pot: Pot, track: Pot | NonNullable<Pot["gangs"]>[number], dial: number): EndRange {
  const range = endRangeOf(pot, track);
  if (dial !== 0 && dial !== 10) return { low: 0.5, high: MID_TURN_SHARE * (track.measured ?? track.resistance) };
  if (range) return { low: range.low, high: END_SLACK * range.high };
  const ohms = Math.max(1e-3, track.endResistance);
  return { low: ohms / MEASURED_SLACK, high: ohms * MEASURED_SLACK };
}

function ofPot(part: string, pot: Pot, dials: readonly number[]): Unknown[] {
  return [pot, ...(pot.gangs ?? [])].flatMap((track, gang): Unknown[] =>
    dials.map((dial): Unknown => {
      const fraction = wiperFraction(track, dial);
      if (fraction > 0 && fraction < 1)
        return { part, field: wiperField(gang, dial), law: "logit", deviation: WIPER_DEVIATION, tolerance: 0 };
      const field = endField(gang, fraction <= 0 ? "low" : "high", dial);
      return { part, field, law: "share", deviation: 1, tolerance: 0 };
    }),
  );
}

/** Everything that guards of one drawing differ in, for takes in these settings. */
export function unknownsOf(build: Build, settings: readonly Settings[]): Unknown[] {
  const dialsOf = (pot: string) => [...new Set(settings.map(({ dials }) => dials[pot] ?? 10))];
  return [
    ...values(build),
    ...partsOfKind(build, "pickup").flatMap(([name, pickup]) => ofPickup(name, pickup)),
    ...partsOfKind(build, "pot").flatMap(([name, pot]) => ofPot(name, pot, dialsOf(name))),
  ];
}
