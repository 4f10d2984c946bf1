import type { Settings } from "../../build-file/settings.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
import { humLevelDb } from "../../response/hum.ts";
import { SILENT_BELOW } from "../../response/labels/position-coils.ts";
import type { Transfers } from "../../response/transfers.ts";
import { loudnessLu } from "../band-energies.ts";
import type { Drive } from "../drive.ts";
import { energiesFor, featuresFor, type Guard, isCurveSilent } from "../guard.ts";
import type { FigureName } from "./figures.ts";
import { toneChange, volumeChange } from "./measuring/knob-changes.ts";
import { LOWS_HZ, MIDDLE_HZ, spanDb, TREBLE_HZ } from "./measuring/spans.ts";

/** Nothing is quieter than this: pickups wound to the same turns leave no hum in the sum, and those made by hand always some. */
const LEAST_HUM_DB = -60;

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

  #loudness(settings: Settings): number {
    this.#meanLoudness ??=
      this.#main.reduce((sum, each) => sum + loudnessLu(this.#energies(each)), 0) / this.#main.length;
    return loudnessLu(this.#energies(settings)) - this.#meanLoudness;
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
        return volumeChange(this.#guard, settings)?.fall ?? null;
      case "volumeTreble":
        return volumeChange(this.#guard, settings)?.treble ?? null;
      case "toneTravel":
        return toneChange(this.#guard, settings)?.travel ?? null;
      case "toneHalf":
        return toneChange(this.#guard, settings)?.half ?? null;
    }
  }
}
