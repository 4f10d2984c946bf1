import { realFft } from "../../filter/real-fft.ts";
import { speakerTransfer } from "../speaker/response.ts";
import type { Cabinet } from "./read-cabinet.ts";

/** Where both are compared: from the speaker's resonance to where it ends. */
const FROM_HZ = 100;
const TO_HZ = 5000;
/** Below this share of its whole power a response holds nothing that a guitar could be heard through. */
const NOTHING = 1e-9;

/** Mean power on a logarithmic axis between the two frequencies, as pink noise would find it. */
function meanPower(powers: Float64Array, stepHz: number): number {
  let sum = 0;
  let weight = 0;
  for (let k = Math.ceil(FROM_HZ / stepHz); k <= Math.min(powers.length - 1, Math.floor(TO_HZ / stepHz)); k++) {
    sum += powers[k]! / k;
    weight += 1 / k;
  }
  return weight === 0 ? 0 : sum / weight;
}

/**
 * The factor that gives a cabinet the stated speaker's mean power from 100 Hz to 5 kHz, so that one is about as loud as the other;
 * undefined where it has none there.
 */
export function evenedLevel({ samples, sampleRateHz }: Cabinet): number | undefined {
  const size = Math.max(2 ** 15, 2 ** Math.ceil(Math.log2(samples.length)));
  const stepHz = sampleRateHz / size;
  const padded = new Float64Array(size);
  padded.set(samples);
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, padded);
  const powers = Float64Array.from(
    { length: size / 2 + 1 },
    (_, k) => spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2,
  );
  const most = powers.reduce((top, power) => Math.max(top, power), 0);
  const own = meanPower(powers, stepHz);
  if (!(own > NOTHING * most)) return undefined;
  const { re, im } = speakerTransfer(powers.map((_, k) => k * stepHz));
  return Math.sqrt(
    meanPower(
      re.map((value, k) => value ** 2 + im[k]! ** 2),
      stepHz,
    ) / own,
  );
}
