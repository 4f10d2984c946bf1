import { logSpaced } from "./frequencies.ts";

/** Neighbours closer than this ratio need no frequencies between them for the phase to be followed. */
const MAX_UNWRAP_RATIO = 1.05;

/** Where a curve is evaluated to be known at the frequencies asked for. */
export interface FrequencyPath {
  readonly frequenciesHz: Float64Array;
  /** Where those asked for stand on it; undefined where they are the path itself. */
  readonly places: readonly number[] | undefined;
}

/** Rising frequencies with none farther from the last than the ratio, so that unwrapping cannot miss a turn. */
function bridged(rising: Float64Array): Float64Array {
  const filled: number[] = [];
  for (const frequency of rising) {
    const last = filled.at(-1);
    if (last !== undefined && frequency / last > MAX_UNWRAP_RATIO) {
      const steps = Math.ceil(Math.log(frequency / last) / Math.log(MAX_UNWRAP_RATIO));
      filled.push(...logSpaced(last, frequency, steps + 1).subarray(1, steps));
    }
    filled.push(frequency);
  }
  return Float64Array.from(filled);
}

function isFineEnough(frequenciesHz: Float64Array): boolean {
  return frequenciesHz.every((frequency, i) => {
    const ratio = i === 0 ? 1 : frequency / frequenciesHz[i - 1]!;
    return ratio >= 1 && ratio <= MAX_UNWRAP_RATIO;
  });
}

/** @param wanted Hz, in any order */
export function pathThrough(wanted: Float64Array): FrequencyPath {
  if (isFineEnough(wanted)) return { frequenciesHz: wanted, places: undefined };
  const frequenciesHz = bridged(wanted.toSorted());
  const placeOf = new Map(Array.from(frequenciesHz, (frequency, place) => [frequency, place]));
  return { frequenciesHz, places: Array.from(wanted, (frequency) => placeOf.get(frequency)!) };
}

/** Of values along a path those that were asked for. */
export function wantedOn({ places }: FrequencyPath, values: Float64Array): Float64Array {
  return places ? Float64Array.from(places, (place) => values[place]!) : values;
}
