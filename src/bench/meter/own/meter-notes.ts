import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import type { Build, Coil } from "../../../build-file/schema.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { coilLadder } from "../../../response/coil-ladder.ts";
import { copperFactor } from "../copper.ts";
import { overSign } from "./display.ts";
import type { OwnMeter } from "./own-meter.ts";
import { rangeFor, sourceOhms, testAmps, topRange } from "./range-for.ts";

/** What an ohmmeter's own current does in a coil. */
export interface CoilOnMeter {
  readonly ohms: number;
  readonly amps: number;
  readonly volts: number;
  /** The meter's current is there after this: L / (R + the meter's own resistance). */
  readonly seconds: number;
  /** As a probe is lifted: at most I·√(L/C), or I times what bridges the coil; null where it has neither. */
  readonly kickVolts: number | null;
  /** ½·L·I². */
  readonly joules: number;
}

/** All that the meter's direct current magnetises, and what bridges it as a whole. */
function magnetised(coil: Coil): { readonly henries: number; readonly bridge: number } {
  const { inductance, sections, across } = coilLadder(coil);
  const henries = sections.reduce((sum, section) => sum + section.inductance, inductance);
  const isWhole = inductance === 0 && sections.length === 1;
  return { henries, bridge: across ?? (isWhole ? sections[0]!.resistance : Number.POSITIVE_INFINITY) };
}

export function coilOnMeter(meter: OwnMeter, coil: Coil, celsius: number): CoilOnMeter {
  const ohms = coil.resistance * copperFactor(celsius);
  const range = meter.range ?? rangeFor(meter, ohms);
  const amps = testAmps(meter, range, ohms);
  const { capacitance } = coil;
  const { henries, bridge } = magnetised(coil);
  const surge = Math.min(capacitance > 0 ? Math.sqrt(henries / capacitance) : Number.POSITIVE_INFINITY, bridge);
  return {
    ohms,
    amps,
    volts: amps * ohms,
    seconds: henries / (ohms + sourceOhms(meter, range)),
    kickVolts: Number.isFinite(surge) ? amps * surge : null,
    joules: (henries * amps ** 2) / 2,
  };
}

const two = (value: number, unit: string) => {
  const [scale, prefix] = (
    [
      [1, ""],
      [1e-3, "m"],
      [1e-6, "µ"],
      [1e-9, "n"],
    ] as const
  ).find(([least]) => value >= least) ?? [1e-12, "p"];
  return `${Number((value / scale).toPrecision(2))} ${prefix}${unit}`;
};

function coilNote(meter: OwnMeter, build: Build, celsius: number): string[] {
  const coils = partsOfKind(build, "pickup").flatMap(([, { coils: each }]) => Object.values(each));
  const [first, ...others] = coils.map((coil) => coilOnMeter(meter, coil, celsius));
  if (first === undefined) return [];
  const most = others.reduce((best, each) => ((each.kickVolts ?? 0) > (best.kickVolts ?? 0) ? each : best), first);
  const { ohms, amps, volts, seconds, kickVolts, joules } = most;
  const lifted =
    kickVolts === null
      ? ""
      : ` As a probe is lifted the coil answers with at most ${two(kickVolts, "V")} and ${two(joules, "J")}, for an instant: not felt, and no harm to coil or meter.`;
  return [
    `Through a coil of ${showQuantity(ohms, "resistance", 3)} this meter drives about ${two(amps, "A")}, ${two(volts, "V")} across it, all of it there after ${two(seconds, "s")}.${lifted}`,
  ];
}

function leadsNote({ ranging, zeroed, leads, ranges }: OwnMeter): string {
  if (ranging === "needle")
    return "Hold the probes together on each scale and turn the needle to 0 before reading on it.";
  if (zeroed) return "Hold the probes together and zero the meter; the readings here are without its leads.";
  return `Hold the probes together on the lowest range (${showQuantity(ranges[0]!, "resistance")}): ${Number(leads.toPrecision(2))} Ω is taken for the leads, and is in every reading here. Where yours shows something else, say so.`;
}

function overNote(meter: OwnMeter): string {
  const sign = overSign(meter);
  if (meter.ranging === "needle") return "What is open leaves the needle at rest, at ∞.";
  const how = sign === "1" ? "a 1 alone at the left" : sign;
  return meter.ranging === "auto"
    ? `What is open, or above ${showQuantity(meter.openFrom, "resistance")}, it shows as ${how}.`
    : `What is above the range it shows as ${how}; open is what shows so on the ${showQuantity(topRange(meter), "resistance")} range.`;
}

/** What to know of this meter on this guard, in words. @param celsius temperature of the coils */
export function meterNotes(meter: OwnMeter, build: Build, celsius: number): string[] {
  return [leadsNote(meter), overNote(meter), ...coilNote(meter, build, celsius)];
}
