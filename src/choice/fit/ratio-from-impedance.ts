import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import type { Across } from "./coil-model.ts";
import type { ImpedanceTable } from "./fit-impedance.ts";
import { admittance, RADIANS_PER_DEGREE, type RatioSweep } from "./loaded-ratio.ts";

/**
 * The voltages that an impedance was computed from, without a load over with it: 1 + Z·Y. Where that is near 1 the impedance is hardly
 * told, and a gain that was touched is in every ohm of it; of the ratio it is one level.
 * @param precision of every impedance, where it has no errors of its own: d ln(1 + Z·Y) = Z·Y/(1 + Z·Y) · d ln Z
 * @param tolerance of the load
 */
export function ratioFromImpedance(
  { frequenciesHz, ohms, errors }: ImpedanceTable,
  degrees: readonly number[],
  load: Across,
  precision?: number,
  tolerance?: number,
): RatioSweep {
  const own = errors ?? (precision === undefined ? undefined : ohms.map(() => precision));
  const points = frequenciesHz.map((hz, i) => {
    const { re: g, im: b } = admittance(load, 2 * Math.PI * hz);
    const angle = degrees[i]! * RADIANS_PER_DEGREE;
    const [x, y] = [ohms[i]! * Math.cos(angle), ohms[i]! * Math.sin(angle)];
    const [re, im] = [1 + x * g - y * b, x * b + y * g];
    return { size: Math.hypot(re, im), angle: Math.atan2(im, re), moved: ohms[i]! * Math.hypot(g, b) };
  });
  return {
    frequenciesHz,
    levelsDb: points.map(({ size }) => Math.log(size) / NEPERS_OF_AMPLITUDE_PER_DB),
    degrees: points.map(({ angle }) => angle / RADIANS_PER_DEGREE),
    errors: own && points.map(({ size, moved }, i) => (own[i]! * moved) / size),
    load,
    tolerance,
  };
}
