import type { Settings } from "../build-file/settings.ts";
import { type FilterPlan, type FilterSet, filtersIn } from "./filters.ts";

/** Filters of a long sweep are computed anew where keeping them would take more than this. */
const MAX_KEPT_FILTER_BYTES = 64 * 2 ** 20;

/** Of the largest tap: far under the rounding of any rendering, and over that of the circuit's solution. */
const SAME_TAP = 1e-10;

/** Whether other filters of the same lengths sound like these. */
function likeness({ taps }: FilterSet): (other: FilterSet) => boolean {
  const tolerances = taps.map((filter) => SAME_TAP * filter.reduce((most, tap) => Math.max(most, Math.abs(tap)), 0));
  return (other) =>
    taps.every((filter, i) => filter.every((tap, n) => Math.abs(tap - other.taps[i]![n]!) <= tolerances[i]!));
}

/** Filters by setting, kept while there is room; settings that sound alike get the same ones. */
export function filterBank(plan: FilterPlan): (settings: Settings) => FilterSet {
  const kept = new Map<Settings, FilterSet>();
  const byLengths = new Map<string, FilterSet[]>();
  let bytes = 0;
  return (settings) => {
    const known = kept.get(settings);
    if (known) return known;
    const filters = filtersIn(plan, settings);
    const lengths = filters.taps.map((taps) => taps.length).join();
    const candidates = byLengths.get(lengths) ?? [];
    const alike = candidates.length > 0 ? candidates.find(likeness(filters)) : undefined;
    if (alike) {
      kept.set(settings, alike);
      return alike;
    }
    bytes += filters.taps.reduce((sum, taps) => sum + taps.byteLength, 0);
    if (bytes <= MAX_KEPT_FILTER_BYTES) {
      kept.set(settings, filters);
      byLengths.set(lengths, [...candidates, filters]);
    }
    return filters;
  };
}
