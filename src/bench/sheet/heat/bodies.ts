import { DEFAULT_IRON, type Iron } from "./iron.ts";
import type { ThermalNetwork } from "./thermal-model.ts";

/** What is heated: sheet metal with a tinned spot on it, or a lug by itself. */
export type Heated = "case" | "lug" | "splice" | "claw";

const AIR_CELSIUS = 20;

/** Ten grams of copper at the tip, 0.385 J/(g·K). */
const TIP_CAPACITY = 3.9;
/** An iron gives its full power when its tip has dropped this far (from memory, no source). */
const FULL_POWER_DROP = 100;
/** A tinned tip on a tinned spot, solder between them (from memory, no source; the least certain figure here). */
const TIP_TO_JOINT = 2.8;
/** A wire's end: a centimetre of stranded copper and the solder on it, melting included, and what it carries away (from memory, no source). */
const END_CAPACITY = 0.1;
const END_TO_AIR = 80;

interface Sheet {
  readonly thickness: number;
  /** Radius of the spot that the solder covers, and of the sheet about it, metres. */
  readonly spot: number;
  readonly edge: number;
  /** J/K of the whole sheet. */
  readonly capacity: number;
  readonly toAir: number;
}

/** Steel: W/(m·K), and J/(m³·K) from 7,850 kg/m³ and 460 J/(kg·K); handbook values. */
const STEEL_CONDUCTIVITY = 50;
const STEEL_HEAT = 7850 * 460;

/** A full-size pot's cup of half-millimetre steel, about 10 cm², and a claw of 1 mm: common practice, from memory. */
const SHEETS = {
  case: { thickness: 0.0005, spot: 0.005, edge: 0.012, capacity: 1.9, toAir: 90 },
  claw: { thickness: 0.001, spot: 0.005, edge: 0.02, capacity: 8, toAir: 40 },
} as const satisfies Record<string, Sheet>;

/** From the case to the track and the lugs on it, through rivets and board (from memory, no source). */
const CASE_TO_LUGS = 20;
const LUGS_CAPACITY = 3;
const LUG_CAPACITY = 0.12;
const SPLICE_CAPACITY = 0.02;

const tip = ({ celsius, watts }: Iron) => ({
  capacity: TIP_CAPACITY,
  toAir: Number.POSITIVE_INFINITY,
  source: { celsius, resistance: FULL_POWER_DROP / watts },
  startCelsius: celsius,
});

const cold = (capacity: number, toAir: number) => ({ capacity, toAir, startCelsius: AIR_CELSIUS });

/** Conduction from a round spot out to a sheet's edge: ln(edge/spot) / (2π·k·thickness), the cylindrical shell of any handbook. */
export function spreadingResistance({ thickness, spot, edge }: Sheet): number {
  return Math.log(edge / spot) / (2 * Math.PI * STEEL_CONDUCTIVITY * thickness);
}

function sheetNetwork(sheet: Sheet, ends: number, iron: Iron): ThermalNetwork {
  const spotCapacity = Math.PI * sheet.spot ** 2 * sheet.thickness * STEEL_HEAT + ends * END_CAPACITY;
  return {
    nodes: [
      tip(iron),
      cold(spotCapacity, END_TO_AIR / ends),
      cold(sheet.capacity, sheet.toAir),
      cold(LUGS_CAPACITY, 200),
    ],
    links: [
      { from: 0, to: 1, resistance: TIP_TO_JOINT },
      { from: 1, to: 2, resistance: spreadingResistance(sheet) },
      { from: 2, to: 3, resistance: CASE_TO_LUGS },
    ],
    airCelsius: AIR_CELSIUS,
  };
}

function lugNetwork(capacity: number, ends: number, iron: Iron): ThermalNetwork {
  return {
    nodes: [tip(iron), cold(capacity + ends * END_CAPACITY, END_TO_AIR / ends)],
    links: [{ from: 0, to: 1, resistance: TIP_TO_JOINT }],
    airCelsius: AIR_CELSIUS,
  };
}

/**
 * A joint under the iron: node 0 the tip, 1 the joint, and of a case 2 its metal and 3 the track with its lugs.
 * @param ends how many ends meet in the joint, at least one
 */
export function heatedJoint(heated: Heated, ends: number, iron: Iron = DEFAULT_IRON): ThermalNetwork {
  switch (heated) {
    case "case":
    case "claw":
      return sheetNetwork(SHEETS[heated], ends, iron);
    case "lug":
      return lugNetwork(LUG_CAPACITY, ends, iron);
    case "splice":
      return lugNetwork(SPLICE_CAPACITY, ends, iron);
  }
}
