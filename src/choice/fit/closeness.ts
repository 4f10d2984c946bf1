import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import { PresolderError } from "../../errors.ts";
import type { Fit } from "./fit-problem.ts";
import type { RatioSweep } from "./loaded-ratio.ts";

/** Of 22 real coils the circuit left all but one within this, and that one's run was noisy (strayr/pickupAnalyseR-data, reduced). */
const MOST_LEFT_DB = 0.55;
/** And all but three of those within this. */
const USUALLY_LEFT_DB = 0.3;

const meanSquare = (values: Iterable<number>) => {
  let [sum, count] = [0, 0];
  for (const value of values) {
    sum += value * value;
    count += 1;
  }
  return sum / Math.max(1, count);
};

/** What a fit leaves of the sizes of a sweep, past what noise accounts for where that is stated; dB. */
function leftOf({ errors }: Fit, { frequenciesHz, errors: stated = [] }: RatioSweep, start: number): number {
  const own = errors.subarray(start, start + frequenciesHz.length);
  return Math.sqrt(Math.max(0, meanSquare(own) - meanSquare(stated))) / NEPERS_OF_AMPLITUDE_PER_DB;
}

const why = ({ errors }: RatioSweep) =>
  errors
    ? "far past its noise: the load was not what was told, or something was moved or touched between the two recordings"
    : "one of the two voltages is noisy, the load was not what was told, or something was moved or touched between them";

/**
 * What to bear in mind of how near a coil comes to the sizes of each sweep.
 * @param starts where each sweep's errors begin
 * @throws DATA_INSUFFICIENT where no circuit of a coil comes near
 */
export function closeness(fit: Fit, sweeps: readonly RatioSweep[], starts: readonly number[]): string[] {
  return sweeps.flatMap((sweep, i) => {
    const left = leftOf(fit, sweep, starts[i]!);
    if (left <= USUALLY_LEFT_DB) return [];
    const ratio = sweeps.length > 1 ? `ratio under load ${i + 1}` : "ratio";
    const found = `The coil that comes nearest leaves ${left.toFixed(2)} dB of the ${ratio}`;
    if (left <= MOST_LEFT_DB)
      return [`${found}, more than most real coils do: look whether the load is as told, and nothing was moved.`];
    const message = `${found}, expected at most ${MOST_LEFT_DB} dB: ${why(sweep)}. Read the load on a meter, and measure both again`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  });
}
