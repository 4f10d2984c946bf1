import type { CoilPlace } from "../strings/comb.ts";
import { coilWeight, partialFrequencyHz } from "../strings/comb.ts";
import { countPartials } from "../strings/partials.ts";
import { type PlaneMode, planeModes } from "../strings/planes.ts";
import { type StringSet, soundingString } from "../strings/string-set.ts";
import { strokeOf } from "../strings/stroke.ts";
import type { Transfers } from "./transfers.ts";

/** The stretch of a note that counts, in seconds from the pluck. */
export interface HeardWindow {
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

export interface OpenStringQuestion {
  readonly transfers: Transfers;
  /** Of every source. */
  readonly places: readonly CoilPlace[];
  readonly strings: StringSet;
  /** Sources are heard in groups, such as a pickup's coils: the group of each, from 0. */
  readonly groupOf: readonly number[];
  readonly groupCount: number;
  readonly window: HeardWindow;
  /** Power gain by which a frequency counts. */
  readonly weight: (frequencyHz: number) => number;
}

/** ∫ e^(−σt)·cos(ωt) dt over the window, per second of it. */
function decayEnergy(sigma: number, omega: number, { fromSeconds, toSeconds }: HeardWindow): number {
  const until = (t: number) =>
    (Math.exp(-sigma * t) * (omega * Math.sin(omega * t) - sigma * Math.cos(omega * t))) / (sigma ** 2 + omega ** 2);
  return (until(toSeconds) - until(fromSeconds)) / (toSeconds - fromSeconds);
}

/** Twice the mean square of a partial's planes together, which beat: Σ a_i·a_j·cos of their difference, as it dies away. */
function planesEnergy(planes: readonly PlaneMode[], window: HeardWindow): number {
  let energy = 0;
  for (const a of planes) {
    for (const b of planes) {
      const omega = 2 * Math.PI * (a.frequencyHz - b.frequencyHz);
      energy += a.amplitude * b.amplitude * decayEnergy(a.decayPerSecond + b.decayPerSecond, omega, window);
    }
  }
  return energy;
}

/**
 * What every open string gives at the jack, plucked at the usual place: for each string, from string 1, a symmetric matrix E in
 * row-major order over the groups, so that groups whose EMF is a_i times the build's own give the mean square Σ a_i·a_j·E_ij.
 * Partials add as powers, groups within a partial as the amplitudes they are.
 */
export function openStringEnergies(question: OpenStringQuestion): Float64Array[] {
  const { strings } = question;
  return strings.strings.map((_, index) => energiesOfString(question, index + 1));
}

function energiesOfString(question: OpenStringQuestion, number: number): Float64Array {
  const { transfers, places, strings, groupOf, groupCount, window, weight } = question;
  const string = soundingString(strings, number, 0);
  const stroke = strokeOf({}, string);
  const count = countPartials(string, Number.POSITIVE_INFINITY);
  const frequenciesHz = Float64Array.from({ length: count }, (_, index) => partialFrequencyHz(string, index + 1));
  const spectra = transfers.perSource(frequenciesHz);
  const energies = new Float64Array(groupCount * groupCount);
  const re = new Float64Array(groupCount);
  const im = new Float64Array(groupCount);
  frequenciesHz.forEach((frequencyHz, k) => {
    re.fill(0);
    im.fill(0);
    for (const [source, place] of places.entries()) {
      const heard = coilWeight(string, place, k + 1);
      re[groupOf[source]!]! += heard * spectra[source]!.re[k]!;
      im[groupOf[source]!]! += heard * spectra[source]!.im[k]!;
    }
    const power = planesEnergy(planeModes(string, stroke, k + 1), window) * weight(frequencyHz);
    for (let i = 0; i < groupCount; i++)
      for (let j = 0; j < groupCount; j++) energies[i * groupCount + j]! += power * (re[i]! * re[j]! + im[i]! * im[j]!);
  });
  return energies;
}
