import { minus, ONE, ratio, shareToRatio, sizeOf, times, type Uncertain } from "./uncertain.ts";

/** Second channel over first, frequency by frequency, as it was recorded. */
export type Ratios = readonly Uncertain[];

/** Recordings that tell the rig itself; each may be left out, and is then taken as perfect. */
export interface Rig {
  /** Both channels on the same point: what the channels' gains differ by. */
  readonly gain?: Ratios | undefined;
  /** Nothing to be measured connected: the input's own impedance. */
  readonly open?: Ratios | undefined;
  /** The same in ohms where no recording tells it. */
  readonly input?: readonly Uncertain[] | undefined;
  /** The clips shorted: what lies in the ground lead. */
  readonly short?: Ratios | undefined;
}

const corrected = (ratios: Ratios, gain: Ratios | undefined) =>
  gain ? ratios.map((each, i) => ratio(each, gain[i]!)) : ratios;

/** From the share of the voltage that stands behind the resistor: Z = R·t/(1 − t). */
const behind = (ratios: Ratios, resistorOhms: number) => ratios.map((t) => times(shareToRatio(t), resistorOhms));

const exactly = ({ re, im }: Uncertain): Uncertain => ({ re, im, sd: 0 });

/** z = 1 / (1/a − 1/b), whose derivatives are (z/a)² and (z/b)². */
function without(a: Uncertain, b: Uncertain): Uncertain {
  const z = exactly(ratio(exactly(a), minus(ONE, ratio(exactly(a), exactly(b)))));
  const square = sizeOf(z) ** 2;
  return { ...z, sd: Math.hypot((square * a.sd) / sizeOf(a) ** 2, (square * b.sd) / sizeOf(b) ** 2) };
}

/**
 * The impedance behind a resistor, from the voltage before it (first channel) and behind it (second channel):
 * Z = V2·Z_R·R / (Z_R·(V1 − V2) − V2·R) − Z_G, with the second channel's own impedance Z_R and the ground lead's Z_G
 * (the circuit's two node equations).
 * @param resistorOhms R
 * @returns ohms, frequency by frequency, each with its standard error
 */
export function seriesResistor(ratios: Ratios, resistorOhms: number, rig: Rig): Uncertain[] {
  const seen = behind(corrected(ratios, rig.gain), resistorOhms);
  const input = rig.open ? behind(corrected(rig.open, rig.gain), resistorOhms) : rig.input;
  const ground = rig.short && behind(corrected(rig.short, rig.gain), resistorOhms);
  const free = (of: readonly Uncertain[]) => (input ? of.map((each, i) => without(each, input[i]!)) : of);
  if (!ground) return [...free(seen)];
  const lead = free(ground);
  return free(seen).map((each, i) => minus(each, lead[i]!));
}
