import type { Transfer } from "../../src/measure/recording/passes.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import type { Complex } from "./simulated-pickup.ts";

/** A transfer as read through hiss, whose share of a sweep's reading rises with the square root of frequency; `noise` at 1 kHz. */
export function hissed(through: (hz: number) => Complex, normal: () => number, noise: number): Transfer {
  const sd = Float64Array.from(TONES_HZ, (hz) => noise * Math.sqrt(Math.max(hz, 100) / 1000));
  const points = TONES_HZ.map(through);
  const part = (index: 0 | 1) => Float64Array.from(points, (point, i) => point[index] + sd[i]! * normal());
  return { frequenciesHz: Float64Array.from(TONES_HZ), re: part(0), im: part(1), sd };
}
