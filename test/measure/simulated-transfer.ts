import type { Transfer } from "../../src/measure/recording/passes.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import type { Complex } from "./simulated-pickup.ts";

/** What hiss at −90 dB of full scale leaves of one reading, as sweeps of 0.15 of full scale have it. */
const NOISE = 2e-5;

/** What a recording tells of a network, as `readRecording` would. @param sdFactor by which its scatter is found wrong */
export function simulatedTransfer(
  through: (hz: number) => Complex,
  normal: () => number,
  sdFactor: () => number = () => 1,
): Transfer {
  const sds = TONES_HZ.map((hz) => NOISE * Math.sqrt(Math.max(hz, 100) / 1000));
  const points = TONES_HZ.map((hz, i): Complex => {
    const [re, im] = through(hz);
    return [re + sds[i]! * normal(), im + sds[i]! * normal()];
  });
  return {
    frequenciesHz: Float64Array.from(TONES_HZ),
    re: Float64Array.from(points, ([re]) => re),
    im: Float64Array.from(points, ([, im]) => im),
    sd: Float64Array.from(sds, (sd) => sd * sdFactor()),
  };
}
