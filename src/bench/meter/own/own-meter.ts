import { faultAt } from "../../../errors.ts";
import { METER_KINDS, type MeterKind, type MeterKindName, type Ranging } from "./meter-kinds.ts";

/** The meter that a person reads with. */
export interface OwnMeter extends MeterKind {
  /** Ends of its ranges in ohms, the lowest first; of a needle, the middles of its scales. */
  readonly ranges: readonly number[];
  /** The range that it stands on, where it stays on one. */
  readonly range?: number;
  /** Ohms that its probes show when held together. */
  readonly leads: number;
  /** Whether it takes its leads off by itself. */
  readonly zeroed: boolean;
}

/** A meter as a person tells of it; what is left out is as the kind has it. */
export interface MeterSpec {
  readonly kind?: MeterKindName | undefined;
  readonly ranging?: Ranging | undefined;
  readonly counts?: number | undefined;
  readonly ranges?: readonly number[] | undefined;
  readonly range?: number | undefined;
  readonly error?: { readonly share: number; readonly digits?: number | undefined } | undefined;
  readonly testCurrent?: number | undefined;
  readonly openFrom?: number | undefined;
  readonly leads?: number | undefined;
  readonly zeroed?: boolean | undefined;
}

/** Two test leads and their plugs (common practice, no source). */
export const USUAL_LEADS_OHMS = 0.3;
/** The middle of a needle's lowest scale, and what its scales are multiplied by (from memory). */
const NEEDLE_MIDDLE_OHMS = 20;
const NEEDLE_SCALES = [1, 10, 100, 1000, 10_000];
/** The last mark of such a scale lies so many times beyond its middle. */
export const LAST_MARK = 100;

const OF_RANGING: Readonly<Record<Ranging, MeterKindName>> = {
  auto: "auto-6000",
  manual: "manual-2000",
  needle: "needle",
};

/** A range every decade, the lowest of 100 Ω to 1 kΩ, up to the one that ends at `openFrom` or next beyond. */
function decades(counts: number, openFrom: number): number[] {
  const lowest = counts / 10 ** (Math.floor(Math.log10(counts)) - 2);
  const ranges = [lowest];
  while (ranges.at(-1)! < openFrom) ranges.push(lowest * 10 ** ranges.length);
  return ranges;
}

function rangesOf({ ranging, counts, openFrom }: MeterKind): number[] {
  if (ranging !== "needle") return decades(counts, openFrom);
  const middles = NEEDLE_SCALES.map((scale) => NEEDLE_MIDDLE_OHMS * scale);
  const within = middles.filter((middle) => middle * LAST_MARK <= openFrom);
  return within.length > 0 ? within : middles.slice(0, 1);
}

/**
 * A person's meter from what they tell of it.
 * @throws PresolderError REQUEST_INVALID where the ranges do not rise or it stands on none of them
 */
export function ownMeterOf(told: MeterKindName | MeterSpec): OwnMeter {
  const spec: MeterSpec = typeof told === "string" ? { kind: told } : told;
  const base: MeterKind = METER_KINDS[spec.kind ?? OF_RANGING[spec.ranging ?? "auto"]];
  const { ranging = base.ranging, counts = base.counts, error, testCurrent = base.testCurrent } = spec;
  const last = spec.ranges?.at(-1);
  const openFrom = spec.openFrom ?? (last && (ranging === "needle" ? last * LAST_MARK : last)) ?? base.openFrom;
  const kind: MeterKind = {
    ...base,
    ...{ ranging, counts, testCurrent, openFrom },
    error: error ? { share: error.share, digits: error.digits ?? 0 } : base.error,
  };
  const isOfKind = [spec.ranging, spec.counts, spec.ranges, spec.openFrom].every((each) => each === undefined);
  const ranges = spec.ranges ?? rangesOf(kind);
  checkRanges(ranges, spec.range);
  return {
    ...kind,
    words: isOfKind ? base.words : wordsOf(kind),
    ranges,
    ...(spec.range === undefined ? {} : { range: spec.range }),
    leads: spec.leads ?? USUAL_LEADS_OHMS,
    zeroed: spec.zeroed ?? false,
  };
}

function wordsOf({ ranging, counts }: MeterKind): string {
  if (ranging === "needle") return "meter with a needle";
  return `meter, ${counts} counts, ${ranging === "auto" ? "finds its range" : "range set by hand"}`;
}

function checkRanges(ranges: readonly number[], range: number | undefined): void {
  if (ranges.some((end, index) => index > 0 && end <= ranges[index - 1]!))
    throw faultAt("REQUEST_INVALID", "meter.ranges", "do not rise; expected the lowest first");
  if (range !== undefined && !ranges.includes(range))
    throw faultAt("REQUEST_INVALID", "meter.range", `is ${range} ohms; expected one of ${ranges.join(", ")}`);
}

/** Ohms that the leads add to every reading. */
export function leadsLeft({ zeroed, leads }: OwnMeter): number {
  return zeroed ? 0 : leads;
}
