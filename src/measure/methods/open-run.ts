import { faultAt } from "../../errors.ts";
import type { Ratios } from "../impedance/series-resistor.ts";
import { sizeOf } from "../impedance/uncertain.ts";

/** Below the resonance of any coil with an input's and a lead's capacitance, whatever is clipped on only lowers the voltage. */
const LOWERS_TO_HZ = 500;
const DEVIATIONS = 3;

/** @throws DATA_INSUFFICIENT where nothing clipped on seems to load more than the part: the two recordings are exchanged */
export function requireOpenAbove(measured: Ratios, open: Ratios, frequenciesHz: Float64Array): void {
  const drops = measured.flatMap((each, i) => {
    if (frequenciesHz[i]! > LOWERS_TO_HZ) return [];
    const drop = sizeOf(open[i]!) - sizeOf(each);
    return Math.abs(drop) > DEVIATIONS * Math.hypot(each.sd, open[i]!.sd) ? [Math.sign(drop)] : [];
  });
  const lowered = drops.filter((sign) => sign > 0).length;
  if (2 * lowered >= drops.length) return;
  const message =
    "the voltage behind the resistor is higher in `measured` than in `open`, with nothing clipped on: the two recordings are exchanged, or the part" +
    " was in neither. Send each as the other, or look at the clips and record both again";
  throw faultAt("DATA_INSUFFICIENT", "measured", message);
}
