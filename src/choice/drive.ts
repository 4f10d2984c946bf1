import type { Spectrum } from "../network/nodal-analysis.ts";
import { SLICES, SLICES_PER_BAND } from "./slices.ts";

/**
 * What drives the coils, as energy in every slice. `common`: all coils hear one signal, each with its own size and sign.
 * `each`: every coil has an EMF of its own, given as the cross energies Σ X_i·conj(X_j) of each pair, so that what coils add
 * or cancel at the jack comes out as it does for the sound itself.
 */
export type Drive =
  | (DriveOf & { readonly kind: "common"; readonly energy: Float64Array })
  | (DriveOf & { readonly kind: "each"; readonly cross: readonly (readonly Spectrum[])[] });

interface DriveOf {
  readonly name: string;
  /**
   * Where in each slice the energy sits: its centre of gravity, so that a curve's slope across a slice that holds one partial
   * costs nothing.
   */
  readonly frequenciesHz: Float64Array;
}

/** The same energy in every ERB band, in all coils alike: no phrase, every part of the ear's range counted the same. */
export function flatDrive(): Drive {
  return {
    kind: "common",
    name: "flat",
    frequenciesHz: SLICES.frequenciesHz,
    energy: new Float64Array(SLICES.frequenciesHz.length).fill(1 / SLICES_PER_BAND),
  };
}

/** A partial of a plucked string: its energy at weight 1, and each coil's weight with its sign. */
export interface PluckedPartial {
  readonly frequencyHz: number;
  readonly energy: number;
  readonly weights: ArrayLike<number>;
}

/** The slice that a frequency lies in; none beyond the bands. */
function sliceOf(frequencyHz: number): number | undefined {
  const { edgesHz } = SLICES;
  let [low, high] = [0, edgesHz.length - 1];
  if (!(frequencyHz >= edgesHz[low]! && frequencyHz < edgesHz[high]!)) return undefined;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (frequencyHz >= edgesHz[middle]!) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Plucked strings by their partials, each coil with its own weight: what different partials add to each other's energy is left out,
 * which is nothing where they do not meet in one bin. @param coils how many weights each partial has
 */
export function driveOfPartials(name: string, partials: readonly PluckedPartial[], coils: number): Drive {
  const count = SLICES.frequenciesHz.length;
  const of = () => new Float64Array(count);
  const cross = Array.from({ length: coils }, () => Array.from({ length: coils }, () => ({ re: of(), im: of() })));
  const [energy, moment] = [of(), of()];
  for (const partial of partials) {
    const slice = sliceOf(partial.frequencyHz);
    if (slice === undefined) continue;
    for (let i = 0; i < coils; i++)
      for (let j = 0; j < coils; j++)
        cross[i]![j]!.re[slice]! += partial.energy * partial.weights[i]! * partial.weights[j]!;
    energy[slice]! += partial.energy;
    moment[slice]! += partial.energy * partial.frequencyHz;
  }
  const frequenciesHz = SLICES.frequenciesHz.map((middle, k) => (energy[k]! > 0 ? moment[k]! / energy[k]! : middle));
  return { kind: "each", name, frequenciesHz, cross };
}

/** The same strings under stronger or weaker coils. @param factors of each coil's EMF, signed */
export function scaledDrive(drive: Drive, factors: readonly number[]): Drive {
  if (drive.kind === "common") return drive;
  const cross = drive.cross.map((row, i) =>
    row.map(({ re, im }, j) => {
      const factor = factors[i]! * factors[j]!;
      return { re: re.map((value) => factor * value), im: im.map((value) => factor * value) };
    }),
  );
  return { ...drive, cross };
}
