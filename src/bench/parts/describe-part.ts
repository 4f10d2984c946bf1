import { dielectricOf } from "../../build-file/catalogue/dielectrics.ts";
import { pickupType } from "../../build-file/catalogue/pickup-types.ts";
import type { Part, PartOf } from "../../build-file/schema.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { SwitchSpec } from "../../build-file/switch-types.ts";
import { SWITCH_WORDS } from "../../build-file/switch-words.ts";
import { type Tolerance, valueTolerance } from "../../build-file/tolerances.ts";
import { capacitorCode, potCode, resistorBands, toleranceLetter } from "./printed-codes.ts";

/** A part as a shop would call it. */
export interface Description {
  readonly what: string;
  /** What is printed on the part; null where nothing customary is. */
  readonly code: string | null;
}

const hundredths = (fraction: number) => Number((Math.abs(fraction) * 100).toPrecision(3));

function percent({ fraction, under }: Tolerance): string {
  return under === undefined ? `±${hundredths(fraction)} %` : `−${hundredths(under)}/+${hundredths(fraction)} %`;
}

const ohms = (value: number) => showQuantity(value, "resistance");

function describePot(part: PartOf<"pot">): Description {
  const code = potCode(part.resistance, part.taper);
  const letter = code === null ? "" : ` (${code[0]})`;
  const taper = typeof part.taper === "string" ? `${part.taper.replace("-", " ")} taper${letter}` : "special taper";
  const extras = [
    ...(part.gangs ? ["two gangs"] : []),
    ...(part.noLoad ? ["no-load"] : []),
    ...(part.drives ? [`with a ${switchWords(part.drives)} on its shaft`] : []),
  ];
  return {
    what: [`${ohms(part.resistance)} pot, ${taper}`, ...extras].join(", "),
    code,
  };
}

function switchWords({ type, centre, poles, throws, positions }: SwitchSpec): string {
  if (type === "rotary") return `rotary switch, poles: ${poles ?? 1}, positions: ${throws ?? 2}`;
  if (type) return `${SWITCH_WORDS[type]}${centre ? `, centre joins ${centre.replace("-", " and ")}` : ""}`;
  return `switch with ${positions?.length ?? 0} positions of its own`;
}

/** How a single coil differs from the usual one: forward, north to the strings. */
function turnedWords({ winding, magnet }: { winding: string; magnet: string }): string[] {
  return [...(winding === "reverse" ? ["reverse wound"] : []), ...(magnet === "south" ? ["reverse polarity"] : [])];
}

function describePickup(part: PartOf<"pickup">): Description {
  const coils = Object.values(part.coils);
  const title = part.type === undefined ? undefined : pickupType(part.type)?.title.toLowerCase();
  const name = title ?? (coils.length === 1 ? "single coil" : `pickup with ${coils.length} coils`);
  const resistances = coils.map((coil) => ohms(coil.resistance)).join(" + ");
  // What the type's title says already is not said again.
  const conductors = part.conductors ?? 4;
  const words = [
    name,
    resistances,
    ...(coils.length === 2 && !name.includes("conductor") ? [`${conductors} conductors`] : []),
    ...(coils.length === 1 ? turnedWords(coils[0]!).filter((word) => !name.includes(word)) : []),
  ];
  return { what: words.join(", "), code: null };
}

export function describePart(part: Part): Description {
  switch (part.kind) {
    case "pickup":
      return describePickup(part);
    case "pot":
      return describePot(part);
    case "switch":
      return { what: switchWords(part), code: null };
    case "cap": {
      const tolerance = valueTolerance(part);
      const code = capacitorCode(part.capacitance);
      const letter = toleranceLetter(tolerance);
      const made = part.dielectric === undefined ? "" : `, ${dielectricOf(part.dielectric).title}`;
      return {
        what: `cap ${showQuantity(part.capacitance, "capacitance")} ${percent(tolerance)}${made}`,
        code: code && `${code}${letter ?? ""}`,
      };
    }
    case "resistor": {
      const tolerance = valueTolerance(part);
      const code = resistorBands(part.resistance, tolerance.fraction);
      return { what: `resistor ${ohms(part.resistance)} ${percent(tolerance)}`, code };
    }
    case "jack":
      return { what: part.stereo ? "stereo jack" : "jack", code: null };
    case "terminal":
      return { what: `connection point: ${part.role ?? "other"}`, code: null };
  }
}
