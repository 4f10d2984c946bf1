import { summarize } from "../../build-file/setting-label.ts";
import { rawSettings, type Settings, type SettingValue } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { type Audibility, audibility } from "../../choice/compare/verdict.ts";
import type { Drive } from "../../choice/drive.ts";
import { heardDifference } from "../../choice/ear/heard-difference.ts";
import { type HeardSound, heardIfAny } from "../../choice/ear/heard-sound.ts";
import { energiesFor, featuresFor, type Guard } from "../../choice/guard.ts";

/** The largest difference that another cap makes, as it is heard, over a guard's settings. */
export interface CapDifference {
  /** dB, the other cap's minus the first's. */
  readonly difference: number;
  /** Hz, the band's middle. */
  readonly frequency: number;
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly label: string;
  /** Hz that the peak moves by there; null where either has none. */
  readonly peakShift: number | null;
  readonly audible: Audibility;
}

/** A guard in some settings, its sounds kept for all that it is held against; null where it is silent. */
export class HeldGuard {
  readonly guard: Guard;
  readonly #drive: Drive;
  readonly #settings: readonly Settings[];
  readonly #sounds: readonly (HeardSound | null)[];

  constructor(guard: Guard, drive: Drive, settings: readonly Settings[]) {
    this.guard = guard;
    this.#drive = drive;
    this.#settings = settings;
    this.#sounds = settings.map((state) => this.#soundOf(guard, state));
  }

  get settingCount(): number {
    return this.#settings.length;
  }

  #soundOf(guard: Guard, state: Settings): HeardSound | null {
    return heardIfAny(energiesFor(guard.transfers(state), this.#drive));
  }

  /** @param checkpoint called between settings */
  against(other: Guard, checkpoint: () => void = () => {}): CapDifference {
    let [largest, at, frequency] = [0, 0, 0];
    for (const [index, state] of this.#settings.entries()) {
      checkpoint();
      const [own, others] = [this.#sounds[index], this.#soundOf(other, state)];
      if (!own || !others) continue;
      const found = heardDifference(own, others);
      if (Math.abs(found.largest.db) <= Math.abs(largest)) continue;
      [largest, at, frequency] = [found.largest.db, index, found.largest.band.centre];
    }
    const state = this.#settings[at]!;
    const words = partWords(this.guard.build.parts);
    const [before, after] = [this.guard, other].map((each) => featuresFor(each.transfers(state)).peak);
    return {
      difference: largest,
      frequency,
      settings: rawSettings(this.guard.controls, state),
      label: summarize(this.guard.controls, state, (name) => words.get(name) ?? name).label,
      peakShift: before && after ? after.frequency - before.frequency : null,
      audible: audibility(largest),
    };
  }
}
