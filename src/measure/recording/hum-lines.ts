import type { SignalKind } from "../signal/measuring-signal.ts";
import { smoothed } from "./passes.ts";

/** So many times what lies about it is a line of hum, and no chance of hiss. */
const LINE = 3;
const NEIGHBOURS = 4;
/**
 * Hum may stand alike in every pass, which hiss does not, and a sweep hears a line as it passes it: of the transfer's error that a
 * line's level as noise foretells, this many times, by simulated hum of 50 to 250 Hz.
 */
const COHERENT: Readonly<Record<SignalKind, number>> = { sweep: 3, multitone: 1.6 };
/** What a sweep hears of a line lies this share of its frequency to either side; beyond this frequency hum is faint. */
const REACH = 0.03;
const HUM_TO_HZ = 700;
const PROBES = [-1, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1];

/**
 * Noise by frequency: chance evened out between neighbours, lines of hum as high as they may do harm.
 * @param noiseAt standard error that what is heard in quiet foretells at a frequency, in Hz
 */
export function noiseWithLines(
  kind: SignalKind,
  frequenciesHz: Float64Array,
  noiseAt: (frequenciesHz: Float64Array) => Float64Array,
): Float64Array {
  const own = noiseAt(frequenciesHz);
  const even = smoothed(own);
  const highest = own.slice();
  if (kind === "sweep") {
    const low = frequenciesHz.filter((hz) => hz < HUM_TO_HZ);
    for (const probe of PROBES) {
      const beside = noiseAt(low.map((hz) => hz * (1 + REACH * probe)));
      for (const [i, each] of beside.entries()) highest[i] = Math.max(highest[i]!, each);
    }
  }
  return even.map((each, i) => {
    const near = own.slice(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1).sort();
    const usual = near[Math.floor(near.length / 2)]!;
    return highest[i]! > LINE * usual ? Math.max(each, COHERENT[kind] * highest[i]!) : each;
  });
}
