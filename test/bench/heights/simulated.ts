import { type Gaps, gapUnder } from "../../../src/bench/heights/gaps.ts";
import { axialField, relativePull } from "../../../src/bench/heights/magnet-pull.ts";
import { mountedPickup } from "../../../src/bench/heights/mounted-pickup.ts";
import { PositionReader } from "../../../src/bench/heights/positions.ts";
import type { HeightsQuestion, LevelRow } from "../../../src/bench/heights/question.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { parseSettings, type Settings } from "../../../src/build-file/settings.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

export const NAMES = ["neck", "middle", "bridge"] as const;
export const STRINGS = 6;
export const PITCH_METRES = 0.8e-3;

/** Amplitude over gap, up to a factor. */
export type Falling = (gapMetres: number) => number;

const ROD = { radiusMetres: 2.4e-3, lengthMetres: 17e-3 };

/** Flux through a coil's mean turn by a dipole over its axis: z away and r wide, r²/(r²+z²)^1.5 (textbook). */
const flux: Falling = (gap) => {
  const [radius, depth] = [6e-3, 3e-3];
  return radius ** 2 / (radius ** 2 + (gap + depth) ** 2) ** 1.5;
};

/** Laws that a pickup may follow; none is known to what fits them. */
export const LAWS: Readonly<Record<string, Falling>> = {
  "power 1": (gap) => gap ** -1,
  "power 1.7": (gap) => gap ** -1.7,
  "power 3": (gap) => gap ** -3,
  "power 2 counted from 2 mm below": (gap) => (gap + 2e-3) ** -2,
  "power 3 counted from 4 mm below": (gap) => (gap + 4e-3) ** -3,
  "field of a rod": (gap) => axialField(ROD, gap),
  "slope of a rod's squared field": (gap) => relativePull(ROD, gap),
  "field of a rod seen by a coil": (gap) => axialField(ROD, gap) * flux(gap),
};

export function normals(seed: number): () => number {
  const uniform = createUniform(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

export const millimetres = (bass: number, treble = bass): Gaps => ({
  bassMetres: bass * 1e-3,
  trebleMetres: treble * 1e-3,
});

export interface Guitar {
  /** Of neck, middle and bridge. */
  readonly laws: readonly Falling[];
  /** Where all strings of all three alone are equally loud. */
  readonly balanced: readonly Gaps[];
  /** What each string is louder by than the others, from string 1. */
  readonly stringsDb?: readonly number[];
}

const decibels = (amplitude: number) => 20 * Math.log10(amplitude);

export const BUILD = readBuild(threeSingles());

const READER = new PositionReader(BUILD);
const known = new Map<number, readonly Float64Array[]>();

function energiesIn(lever: number): readonly Float64Array[] {
  const energies = known.get(lever) ?? READER.positionIn(settingsAt(lever), NAMES).energies;
  known.set(lever, energies);
  return energies;
}

export function settingsAt(lever: number): Settings {
  return parseSettings(READER.controls, { lever });
}

/** The lever's position in which each pickup sounds alone. */
export const ALONE = [5, 3, 1];

/** Levels of all strings in a lever's position: each pickup's own law, mixed as the build mixes them; 0 dB alone at balance. */
export function levelsOf({ laws, balanced, stringsDb = [] }: Guitar, lever: number, gaps: readonly Gaps[]): number[] {
  const energies = energiesIn(lever);
  return Array.from({ length: STRINGS }, (_, index) => {
    const amplitudes = NAMES.map((_, p) => {
      const under = (of: Gaps) => laws[p]!(gapUnder(of, index + 1, STRINGS));
      return under(gaps[p]!) / under(balanced[p]!) / Math.sqrt(energiesIn(ALONE[p]!)[index]![p * 5]!);
    });
    let power = 0;
    for (const [i, a] of amplitudes.entries())
      for (const [j, b] of amplitudes.entries()) power += a * b * energies[index]![i * 4 + j]!;
    return decibels(Math.sqrt(power)) + (stringsDb[index] ?? 0);
  });
}

export interface Evening {
  readonly guitar: Guitar;
  /** The heights as they are. */
  readonly now: readonly Gaps[];
  /** Heights recorded at. */
  readonly heights: readonly (readonly Gaps[])[];
  readonly levers: readonly number[];
  /** Of every level, in dB. */
  readonly noiseDb: number;
  readonly seed: number;
}

export function rowsOf({ guitar, heights, levers, noiseDb, seed }: Evening): LevelRow[] {
  const normal = normals(seed);
  return heights.flatMap((gaps) =>
    levers.map((lever) => ({
      settings: settingsAt(lever),
      gaps,
      levelsDb: levelsOf(guitar, lever, gaps).map((level) => level + noiseDb * normal()),
    })),
  );
}

export function questionOf(evening: Evening, changes: Partial<HeightsQuestion> = {}): HeightsQuestion {
  return {
    build: BUILD,
    pickups: NAMES.map((name, index) =>
      mountedPickup(name, {
        gaps: evening.now[index]!,
        pitchMetres: { bass: PITCH_METRES, treble: PITCH_METRES },
        minMetres: 1e-3,
        maxMetres: 8e-3,
        screwsApartMetres: 50e-3,
        stringsApartMetres: 50e-3,
      }),
    ),
    rows: rowsOf(evening),
    withinDb: 1,
    reference: settingsAt(1),
    withStrings: true,
    ...changes,
  };
}

export const lowered = (gaps: readonly Gaps[], factor: number): Gaps[] =>
  gaps.map(({ bassMetres, trebleMetres }) => ({
    bassMetres: bassMetres * factor,
    trebleMetres: trebleMetres * factor,
  }));

/** Where a simulated guitar balances, and where it stands before: the bridge is right, the others are too near. */
export const BALANCED = [millimetres(3.2, 2.6), millimetres(2.8, 2.3), millimetres(2.2, 1.8)];
export const NOW = [millimetres(2.6, 2.4), millimetres(2.3, 2.2), millimetres(2.2, 1.8)];
