import type { Build } from "../build-file/schema.ts";
import { Controls, type Settings } from "../build-file/settings.ts";
import { decibels } from "../decibels.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import { ResponseEngine } from "../response/engine.ts";
import { type Features, findFeatures } from "../response/features.ts";
import { SILENT_BELOW } from "../response/labels/position-coils.ts";
import { magnitudeDb } from "../response/level-and-phase.ts";
import type { Transfers } from "../response/transfers.ts";
import type { Drive } from "./drive.ts";
import { SLICES } from "./slices.ts";
import { type Patch, withPatches } from "./variant.ts";

/** A build that choices ask for curves and band energies, and for variants of itself. */
export class Guard {
  readonly build: Build;
  readonly controls: Controls;
  readonly #engine: ResponseEngine;

  constructor(build: Build, engine = new ResponseEngine(build), controls = new Controls(build)) {
    this.build = build;
    this.controls = controls;
    this.#engine = engine;
  }

  with(patches: readonly Patch[]): Guard {
    if (patches.length === 0) return this;
    const build = withPatches(this.build, patches);
    return new Guard(build, this.#engine.withValues(build), this.controls);
  }

  transfers(settings: Settings): Transfers {
    return this.#engine.transfersIn(settings);
  }

  get sources() {
    return this.#engine.sources;
  }
}

/** dB re the EMF of a coil with output 1, all coils driven together. */
export function curveFor(transfers: Transfers, frequenciesHz: Float64Array): Float64Array {
  return magnitudeDb(transfers.total(frequenciesHz));
}

export function featuresFor(transfers: Transfers): Features {
  return findFeatures(transfers.power());
}

/** Whether the curve shows no more than what leaks past a volume at its end: no coil sounds, or those that do cancel. */
export function isCurveSilent(transfers: Transfers): boolean {
  const strongest = transfers.sources.reduce((most, { emf }) => Math.max(most, Math.abs(emf)), 0);
  const silence = decibels(SILENT_BELOW * strongest);
  return curveFor(transfers, SLICES.frequenciesHz).every((level) => level <= silence);
}

/** A coil that no contact joins to the jack. */
const isNothing = ({ re, im }: Spectrum) =>
  re[0] === 0 && im[0] === 0 && re.every((x) => x === 0) && im.every((x) => x === 0);

/** Energy at the jack in every slice, for a drive of the build's coils. */
export function energiesFor(transfers: Transfers, drive: Drive): Float64Array {
  if (drive.kind === "common") {
    const { re, im } = transfers.total(drive.frequenciesHz);
    const energies = new Float64Array(re.length);
    for (let k = 0; k < energies.length; k++) energies[k] = drive.energy[k]! * (re[k]! ** 2 + im[k]! ** 2);
    return energies;
  }
  const { cross } = drive;
  const spectra = transfers.perSource(drive.frequenciesHz);
  const sounding = [...spectra.keys()].filter((i) => !isNothing(spectra[i]!));
  const energies = new Float64Array(drive.frequenciesHz.length);
  for (const i of sounding) {
    for (const j of sounding) {
      if (j < i) continue;
      const [a, b, pair] = [spectra[i]!, spectra[j]!, cross[i]![j]!];
      // Its own counterpart brings as much again: the pair's energies are each other's conjugates.
      const times = i === j ? 1 : 2;
      for (let k = 0; k < energies.length; k++) {
        const productRe = a.re[k]! * b.re[k]! + a.im[k]! * b.im[k]!;
        const productIm = a.im[k]! * b.re[k]! - a.re[k]! * b.im[k]!;
        energies[k]! += times * (productRe * pair.re[k]! - productIm * pair.im[k]!);
      }
    }
  }
  // A sum of squares by rights; rounding may leave a silent slice a hair under nothing.
  return energies.map((energy) => Math.max(0, energy));
}

/** What the coil that takes up most would give if nothing were in its way. */
function strongestAlone(sources: Transfers["sources"], drive: Drive): number {
  if (drive.kind === "common") return sumOf(drive.energy) * Math.max(0, ...sources.map(({ emf }) => emf ** 2));
  return Math.max(0, ...drive.cross.map((pairs, coil) => sumOf(pairs[coil]!.re)));
}

const sumOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

/**
 * Whether no more reaches the jack than leaks past a volume at its end. Coils that cancel where they are driven alike, as two like
 * ones out of phase do, are heard all the same where each has a place of its own along the string.
 * @param energies as `energiesFor` gives them for this drive
 */
export function isSilent({ sources }: Transfers, drive: Drive, energies: Float64Array): boolean {
  return sumOf(energies) <= SILENT_BELOW ** 2 * strongestAlone(sources, drive);
}
