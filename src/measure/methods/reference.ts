import { faultAt } from "../../errors.ts";
import { pointsOf, sizeOf } from "../impedance/uncertain.ts";
import type { Transfer } from "../recording/passes.ts";

/** What any interface lets through evenly, and no coil does. */
const FROM_HZ = 100;
const TO_HZ = 10_000;
/** A point that noise may move by more tells no level. */
const MOST_RELATIVE_ERROR = 0.1;
const LEAST_POINTS = 8;
/** An exciter's slope and a coil's resonance come to 4 to 10 dB of a simulated pickup; an interface hardly to one: a judgement, no source. */
const CLEARLY_DECIBELS = 2;

/** Standard deviation of the level over frequency, dB; undefined where hardly any stands above the noise. */
function unevenness(transfer: Transfer): number | undefined {
  const points = pointsOf(transfer).filter((point, i) => {
    const hz = transfer.frequenciesHz[i]!;
    return hz >= FROM_HZ && hz <= TO_HZ && point.sd < MOST_RELATIVE_ERROR * sizeOf(point);
  });
  if (points.length < LEAST_POINTS) return undefined;
  const levels = points.map((point) => 20 * Math.log10(sizeOf(point)));
  const mean = levels.reduce((sum, each) => sum + each, 0) / levels.length;
  return Math.sqrt(levels.reduce((sum, each) => sum + (each - mean) ** 2, 0) / levels.length);
}

/**
 * The signal itself comes back even; what a pickup makes of it, through an exciter and its own resonance, does not.
 * @param said the channel that the signal itself is said to be on
 * @throws DATA_INSUFFICIENT where it is the other one
 */
export function requireReference(itself: Transfer, pickup: Transfer, said: "first" | "second", path: string): void {
  const [even, uneven] = [unevenness(itself), unevenness(pickup)];
  if (even === undefined || uneven === undefined || even < uneven + CLEARLY_DECIBELS) return;
  const other = said === "first" ? "second" : "first";
  const message =
    `the ${said} channel, said to be the signal itself, is uneven by ${even.toFixed(1)} dB as a pickup's is, and the other by ${uneven.toFixed(1)} dB:` +
    ` the channels are swapped. Say reference: ${other}, or change the plugs over`;
  throw faultAt("DATA_INSUFFICIENT", path, message);
}
