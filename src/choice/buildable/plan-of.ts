import { layoutOf } from "../../build-file/plans/layouts.ts";
import { positionOf } from "../../build-file/plans/plan-pickups.ts";
import type { PlanInput, Where } from "../../build-file/plans/plan-schema.ts";
import { pickupSpec } from "../../build-file/recognise/pickup-spec.ts";
import type { Pickup } from "../../build-file/schema.ts";
import { DEFAULT_SCALE_METRES } from "../../lengths.ts";
import type { Family } from "./families.ts";
import type { Option } from "./options.ts";
import type { Stock, Track } from "./stock.ts";
import type { Variant } from "./variants.ts";

const potOf = ({ part }: Track) => ({
  pot: part.resistance,
  taper: part.taper,
  ...(part.midpoint === undefined ? {} : { midpoint: part.midpoint }),
  ...(part.measured === undefined ? {} : { measured: part.measured }),
});

/** Pots in the order in which their push-pulls take an option, then small switches. */
function whereOf(variant: Variant, switches: number): Where[] {
  const small = Array.from({ length: switches - variant.pushPulls.length }, (_, index) => ({
    switch: `switch${index + 1}`,
  }));
  return [...variant.pushPulls, ...small];
}

type Switched = Pick<PlanInput, "split" | "seriesParallel" | "phase" | "seriesLink" | "alwaysOn">;
type Many = { split: object[]; seriesParallel: object[]; phase: object[] };

function addOption(option: Option, by: Where, many: Many, plan: Record<string, unknown>): void {
  switch (option.kind) {
    case "split":
      many.split.push({ pickup: option.pickup, keeps: option.keeps, by });
      break;
    case "seriesParallel":
    case "phase":
      many[option.kind].push({ pickup: option.pickup, by });
      break;
    case "seriesLink":
      plan.seriesLink = { pickups: [...option.pickups], by };
      break;
    case "alwaysOn":
      plan.alwaysOn = { pickup: option.pickup, by };
  }
}

function switchedOf({ switched, automatic }: Family, variant: Variant): Switched {
  const many: Many = { split: [], seriesParallel: [], phase: [] };
  const plan: Record<string, unknown> = {};
  const where = whereOf(variant, switched.length);
  for (const [index, options] of switched.entries())
    for (const option of options) addOption(option, where[index]!, many, plan);
  for (const { pickup, position, keeps } of automatic) many.split.push({ pickup, keeps, by: { position } });
  const said = Object.entries(many).filter(([, options]) => options.length > 0);
  return { ...plan, ...Object.fromEntries(said) };
}

function pickupsOf({ layout, pickups }: Family): PlanInput["pickups"] {
  const specs = [...pickups].map(([place, { part }]) => {
    const at = positionOf(layoutOf(layout), place, DEFAULT_SCALE_METRES);
    return [place, pickupSpec(part as Parameters<typeof pickupSpec>[0], part as Pickup, at)];
  });
  return Object.fromEntries(specs);
}

function bleedOf({ bleed }: Variant, { caps, resistors }: Stock): Pick<PlanInput, "trebleBleed"> {
  if (!bleed) return {};
  const { capacitance } = caps[bleed.cap]!.part;
  if (!bleed.resistor) return { trebleBleed: { capacitance } };
  const { index, joined } = bleed.resistor;
  return { trebleBleed: { capacitance, [joined]: resistors[index]!.part.resistance } };
}

/** A guard of the drawer as a plan. */
export function planOf(family: Family, variant: Variant, stock: Stock): PlanInput {
  const volumes = variant.volumeTracks.map((track) => potOf(stock.tracks[track]!));
  const farads = variant.toneCaps.map((cap) => stock.caps[cap]!.part.capacitance);
  const isShared = farads.length < variant.tones.length;
  const tones = variant.tones.map((pickups, index) => {
    const track = stock.tracks[variant.toneTracks[index]!]!;
    return {
      ...potOf(track),
      ...(track.part.noLoad ? { noLoad: true } : {}),
      ...(isShared ? {} : { cap: farads[index]! }),
      ...(pickups.length === 0 ? {} : { pickups: [...pickups] }),
    };
  });
  const [first] = volumes;
  return {
    layout: family.layout,
    pickups: pickupsOf(family),
    ...(volumes.length === 1
      ? { volume: first! }
      : { volumes: volumes.map((pot, index) => ({ ...pot, pickups: [["neck", "bridge"][index]!] })) }),
    tones,
    ...(isShared ? { sharedCap: farads[0]! } : {}),
    ...bleedOf(variant, stock),
    ...switchedOf(family, variant),
  };
}
