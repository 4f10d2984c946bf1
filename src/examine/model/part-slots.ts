import type { Build, Part, Pickup, Pot } from "../../build-file/schema.ts";
import { wiperFraction } from "../../build-file/taper.ts";
import { valueAt, withPatches } from "../../choice/variant.ts";
import { NetworkBuilder } from "../../network/elements.ts";
import { slotCount, slotValues } from "../../network/slots.ts";
import { addPart } from "../../response/circuit.ts";
import { liftsTrack } from "../../response/pot-elements.ts";
import { endField, endLaw, multipleAt, type Unknown, wiperField } from "./unknowns.ts";

/** The numbers that a part's elements are made of, in the order of its elements and then of its mutual inductances. */
export interface PartSlots {
  readonly values: readonly number[];
  /** How each of its unknowns moves each number, those at 0 left out. */
  readonly slopes: readonly { readonly unknown: number; readonly slot: number; readonly slope: number }[];
}

/** An unknown of a part, by its index among all, and where it stands. */
export interface Stand {
  readonly unknown: Unknown;
  readonly index: number;
  readonly value: number;
}

const LUG_NODES = 64;

function nodeCounter(): (local: string) => number {
  const nodes = new Map<string, number>();
  return (local) => {
    const node = nodes.get(local) ?? nodes.size + 1;
    nodes.set(local, node);
    return node;
  };
}

function moved<P extends Part>(part: P, stands: readonly Stand[]): P {
  const patches = stands.flatMap(({ unknown, value }) => {
    const { law, field, centre = 0 } = unknown;
    if (law !== "log" || centre + value === 0) return [];
    const nominal = valueAt({ parts: { part } } as unknown as Build, "part", field);
    return nominal === undefined ? [] : [{ part: "part", field, value: nominal * multipleAt(unknown, value) }];
  });
  if (patches.length === 0) return part;
  return withPatches({ parts: { part } } as unknown as Build, patches).parts.part as P;
}

const wholeInductance = ({ inductance, loss }: Pickup["coils"][string]) =>
  inductance + (Array.isArray(loss) ? loss.reduce((sum, each) => sum + (each.inductance ?? 0), 0) : 0);

/** Each source's shelves get what its coil's eddy currents have beyond the drawing. */
function withEddies(values: number[], network: ReturnType<NetworkBuilder["build"]>, pickup: Pickup, at: Reader): void {
  const coils = Object.entries(pickup.coils);
  let slot = 0;
  for (const element of network.elements) {
    if (element.kind === "branch" && element.source !== undefined) {
      const [name, coil] = coils[element.source]!;
      for (let shelf = 0; shelf < slotCount(element) - 2; shelf++)
        values[slot + 2 + shelf] = at(`coils.${name}.eddy${shelf}`) * wholeInductance(coil);
    }
    slot += slotCount(element);
  }
}

type Reader = (field: string) => number;

function fixedPart(part: Exclude<Part, Pot>, stands: readonly Stand[]): number[] {
  const builder = new NetworkBuilder(LUG_NODES);
  addPart(builder, moved(part, stands), nodeCounter());
  const network = builder.build();
  const values = slotValues(network);
  if (part.kind === "pickup") withEddies(values, network, part, readerOf(stands));
  return values;
}

function readerOf(stands: readonly Stand[]): Reader {
  return (field) => stands.find(({ unknown }) => unknown.field === field)?.value ?? 0;
}

const logistic = (x: number) => 1 / (1 + Math.exp(-x));

/** Of a standard normal variable, how often it lies under z, to 7.5e-8 (Abramowitz & Stegun 26.2.17). */
function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return z >= 0 ? 1 - tail : tail;
}

/** Ohms below and above the wiper. */
function trackOhms(pot: Pot, gang: number, dial: number, at: Reader): [number, number] {
  const track = gang === 0 ? pot : pot.gangs![gang - 1]!;
  const prefix = gang === 0 ? "" : `gangs.${gang - 1}.`;
  const whole =
    (track.measured ?? track.resistance) *
    Math.exp(at(`${prefix}${track.measured === undefined ? "resistance" : "measured"}`));
  const fraction = wiperFraction(track, dial);
  if (fraction > 0 && fraction < 1) {
    const share = logistic(Math.log(fraction / (1 - fraction)) + at(wiperField(gang, dial)));
    return [share * whole, (1 - share) * whole];
  }
  const isLow = fraction <= 0;
  const { low, high } = endLaw(pot, track, dial);
  const place = normalShare(at(endField(gang, isLow ? "low" : "high", dial)));
  const left = Math.min(whole / 2, low * (high / low) ** place);
  return isLow ? [left, whole - left] : [whole - left, left];
}

function potValues(pot: Pot, dial: number, stands: readonly Stand[]): number[] {
  const at = readerOf(stands);
  const gangs = [pot, ...(pot.gangs ?? [])];
  return gangs.flatMap((_, gang) => (gang === 0 && liftsTrack(pot, dial) ? [0] : trackOhms(pot, gang, dial, at)));
}

/** So small that what a value's logarithm bends over it is lost among the floor. */
const STEP = 1e-5;

/** @param dial 0 to 10; of a pot alone */
export function partSlots(part: Part, dial: number, stands: readonly Stand[]): PartSlots {
  const at = (moves: readonly Stand[]) => (part.kind === "pot" ? potValues(part, dial, moves) : fixedPart(part, moves));
  const values = at(stands);
  if (values.length === 0) return { values, slopes: [] };
  const slopes = stands.flatMap(({ index, unknown }, which) => {
    if (part.kind === "pot" && isElsewhere(unknown, part, dial)) return [];
    const above = at(stands.map((stand, each) => (each === which ? { ...stand, value: stand.value + STEP } : stand)));
    return values.flatMap((_, slot) => {
      const slope = (above[slot]! - values[slot]!) / STEP;
      return slope === 0 ? [] : [{ unknown: index, slot, slope }];
    });
  });
  return { values, slopes };
}

/** Whether an unknown is of another dial's wiper. */
function isElsewhere({ field, law }: Unknown, pot: Pot, dial: number): boolean {
  return (
    law === "logit" &&
    ![0, ...(pot.gangs ?? []).map((_, index) => index + 1)].some((gang) => field === wiperField(gang, dial))
  );
}
