import { type Settings, withControl } from "../../build-file/settings.ts";
import { powerDecibels } from "../../decibels.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
import { humLevelDb } from "../../response/hum.ts";
import { SILENT_BELOW } from "../../response/labels/position-coils.ts";
import type { Transfers } from "../../response/transfers.ts";
import { loudnessLu } from "../band-energies.ts";
import { type Drive, flatDrive } from "../drive.ts";
import { curveFor, energiesFor, featuresFor, type Guard, isCurveSilent } from "../guard.ts";
import { brightnessCams } from "../search/wish.ts";
import { SLICES } from "../slices.ts";
import type { FigureName } from "./figures.ts";

const LOWS_HZ = [50, 250] as const;
const MIDDLE_HZ = [250, 1000] as const;
const TREBLE_HZ = [2000, 5000] as const;
/** Where those who clean up by the volume customarily leave it; common practice, no source. */
const TURNED_DOWN = 6;
/** Nothing is quieter than this: pickups wound to the same turns leave no hum in the sum, and those made by hand always some. */
const LEAST_HUM_DB = -60;
/** What moves the brightness by less than half the ear's smallest band has no half. */
const LEAST_TRAVEL_CAMS = 0.5;
const FLAT = flatDrive();

/** The energy of the slices whose middle lies in a span of frequencies, in dB. */
function spanDb(energies: Float64Array, [low, high]: readonly [number, number]): number {
  let sum = 0;
  for (const [k, hz] of SLICES.frequenciesHz.entries()) if (hz >= low && hz < high) sum += energies[k]!;
  return powerDecibels(sum);
}

/** Whether no coil reaches the jack. Coils that cancel in the curve, which drives all alike, do not cancel under a string. */
function isDead(transfers: Transfers): boolean {
  return transfers
    .perSource(Float64Array.of(REFERENCE_HZ))
    .every(({ re, im }) => Math.hypot(re[0]!, im[0]!) < SILENT_BELOW);
}

function curveFigure(figure: "peakFrequency" | "peakHeight" | "cutoff", transfers: Transfers): number | null {
  const { peak, cutoff } = featuresFor(transfers);
  if (figure === "cutoff") return cutoff;
  return figure === "peakHeight" ? (peak?.level ?? 0) : (peak?.frequency ?? null);
}

/** What a guard's wiring alone decides in one setting. */
export interface Cell {
  readonly settings: Settings;
  /** Pickups side by side, as the figure of that name has it. */
  readonly together: number;
}

/** Figures of one guard, each worked out once. */
export class Measured {
  readonly #guard: Guard;
  readonly #drive: Drive;
  readonly #main: readonly Settings[];
  readonly #sounds = new Map<Settings, { readonly transfers: Transfers; energies?: Float64Array }>();
  #meanLoudness: number | undefined;

  /**
   * @param drive what the coils are driven by where sounds are weighed
   * @param main every position of the main switch, whose mean loudness is the guard's
   */
  constructor(guard: Guard, drive: Drive, main: readonly Settings[]) {
    this.#guard = guard;
    this.#drive = drive;
    this.#main = main;
  }

  #sound(settings: Settings) {
    const known = this.#sounds.get(settings);
    if (known) return known;
    const sound = { transfers: this.#guard.transfers(settings) };
    this.#sounds.set(settings, sound);
    return sound;
  }

  #energies(settings: Settings): Float64Array {
    const sound = this.#sound(settings) as { transfers: Transfers; energies?: Float64Array };
    sound.energies ??= energiesFor(sound.transfers, this.#drive);
    return sound.energies;
  }

  #turned(settings: Settings, role: "volume" | "tone", dial: number): Settings | null {
    const { controls } = this.#guard;
    return controls.potsWithRole(role).length === 0 ? null : withControl(controls, settings, role, dial);
  }

  #loudness(settings: Settings): number {
    this.#meanLoudness ??=
      this.#main.reduce((sum, each) => sum + loudnessLu(this.#energies(each)), 0) / this.#main.length;
    return loudnessLu(this.#energies(settings)) - this.#meanLoudness;
  }

  #volumeChange(settings: Settings): { fall: number; treble: number } | null {
    const down = this.#turned(settings, "volume", TURNED_DOWN);
    if (!down) return null;
    const [open, turned] = [settings, down].map((each) => {
      const transfers = this.#guard.transfers(each);
      const level = curveFor(transfers, Float64Array.of(REFERENCE_HZ))[0]!;
      return { level, treble: spanDb(energiesFor(transfers, FLAT), TREBLE_HZ) - level };
    });
    return { fall: turned!.level - open!.level, treble: turned!.treble - open!.treble };
  }

  #toneChange(settings: Settings): { travel: number; half: number | null } | null {
    const cams = [10, 5, 0].map((dial) => {
      const turned = this.#turned(settings, "tone", dial);
      return turned && brightnessCams(this.#guard, turned);
    });
    const [open, half, shut] = cams;
    if (open == null || half == null || shut == null) return null;
    const travel = open - shut;
    return { travel, half: Math.abs(travel) < LEAST_TRAVEL_CAMS ? null : (100 * (open - half)) / travel };
  }

  /** Null where the setting does not have the figure: silence, no pot to turn, no cutoff. */
  valueOf(figure: FigureName, { settings, together }: Cell): number | null {
    if (figure === "together") return together;
    const { transfers } = this.#sound(settings);
    if (isDead(transfers)) return null;
    switch (figure) {
      case "peakFrequency":
      case "peakHeight":
      case "cutoff":
        return isCurveSilent(transfers) ? null : curveFigure(figure, transfers);
      case "lows":
        return spanDb(this.#energies(settings), LOWS_HZ) - spanDb(this.#energies(settings), MIDDLE_HZ);
      case "treble":
        return spanDb(this.#energies(settings), TREBLE_HZ) - spanDb(this.#energies(settings), MIDDLE_HZ);
      case "loudness":
        return this.#loudness(settings);
      case "hum":
        return Math.max(LEAST_HUM_DB, humLevelDb(transfers));
      case "volumeFall":
        return this.#volumeChange(settings)?.fall ?? null;
      case "volumeTreble":
        return this.#volumeChange(settings)?.treble ?? null;
      case "toneTravel":
        return this.#toneChange(settings)?.travel ?? null;
      case "toneHalf":
        return this.#toneChange(settings)?.half ?? null;
    }
  }
}
