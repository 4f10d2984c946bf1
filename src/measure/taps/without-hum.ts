import { TAP_RATE_HZ } from "./tap-signal.ts";

const MAINS_HZ = [50, 60];
/** Periods away on either side: near enough for hum that wanders, far enough that a tap is not its own neighbour. */
const FROM_PERIODS = 3;
const TO_PERIODS = 8;

const middleOf = (sorted: Float64Array) => {
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};

/** The median of values, in whatever order. */
export const medianOf = (values: Iterable<number>): number => middleOf(Float64Array.from(values).sort());

/**
 * What stands out of the samples whole periods before and after. Taps are rare, so that the median of those is hum, its harmonics and
 * whatever drifts; a mean would leave the ghost of each tap about it.
 */
function standingOut(low: Float64Array, mainsHz: number): Float64Array {
  const period = TAP_RATE_HZ / mainsHz;
  const around = new Float64Array(2 * (TO_PERIODS - FROM_PERIODS + 1));
  return low.map((here, n) => {
    let count = 0;
    for (let k = FROM_PERIODS; k <= TO_PERIODS; k += 1) {
      if (n - k * period >= 0) around[count++] = low[n - k * period]!;
      if (n + k * period < low.length) around[count++] = low[n + k * period]!;
    }
    return count === 0 ? 0 : here - middleOf(around.subarray(0, count).sort());
  });
}

const middleSize = (samples: Float64Array) => medianOf(samples.map(Math.abs));

/** The take without its hum, by whichever mains leaves less. */
export function withoutHum(low: Float64Array): Float64Array {
  const [first, ...others] = MAINS_HZ.map((hz) => standingOut(low, hz));
  return others.reduce((best, each) => (middleSize(each) < middleSize(best) ? each : best), first!);
}
