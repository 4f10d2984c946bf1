import { type Biquad, kWeighting } from "../audio/k-weighting.ts";
import { type Band, erbBands } from "./erb.ts";

/** The ERB bands cut into slices narrow enough that a curve is nearly straight across one. */
export interface Slices {
  readonly bands: readonly Band[];
  /** Middle of every slice, rising. */
  readonly frequenciesHz: Float64Array;
  /** Edges of the slices, one more than there are slices. */
  readonly edgesHz: Float64Array;
  /** Power gain of the K-weighting of ITU-R BS.1770 at every slice's middle. */
  readonly kGain: Float64Array;
}

/** A quarter of an ERB: a peak of Q 10 at 4 kHz is still four slices wide at half power. */
export const SLICES_PER_BAND = 4;
const TABLE_RATE_HZ = 48_000;

function powerGain(section: Biquad, frequencyHz: number): number {
  const w = (2 * Math.PI * frequencyHz) / TABLE_RATE_HZ;
  const [c1, s1, c2, s2] = [Math.cos(w), Math.sin(w), Math.cos(2 * w), Math.sin(2 * w)];
  const above = Math.hypot(section.b0 + section.b1 * c1 + section.b2 * c2, section.b1 * s1 + section.b2 * s2);
  const below = Math.hypot(1 + section.a1 * c1 + section.a2 * c2, section.a1 * s1 + section.a2 * s2);
  return (above / below) ** 2;
}

/** Power gain of the K-weighting as its 48 kHz tables define it. */
export function kPowerGain(frequencyHz: number): number {
  return kWeighting(TABLE_RATE_HZ).reduce((gain, section) => gain * powerGain(section, frequencyHz), 1);
}

function makeSlices(): Slices {
  const bands = erbBands();
  const edges = bands.flatMap(({ low, high }) =>
    Array.from({ length: SLICES_PER_BAND }, (_, i) => low + ((high - low) * i) / SLICES_PER_BAND),
  );
  const edgesHz = Float64Array.from([...edges, bands[bands.length - 1]!.high]);
  const frequenciesHz = Float64Array.from(edges, (edge, i) => (edge + edgesHz[i + 1]!) / 2);
  return { bands, edgesHz, frequenciesHz, kGain: frequenciesHz.map(kPowerGain) };
}

export const SLICES: Slices = makeSlices();
