import type { Build } from "../../../build-file/schema.ts";
import { Controls, type Settings } from "../../../build-file/settings.ts";
import { partWords } from "../../../build-file/words/part-words.ts";
import { powerDecibels } from "../../../decibels.ts";
import { ResponseEngine } from "../../../response/engine.ts";
import { findFeatures } from "../../../response/features.ts";
import { ActivityReader } from "../../../response/labels/activity.ts";
import { fullControls } from "../../../response/labels/position-coils.ts";
import { mainPositions } from "../../main-positions.ts";
import { PositionReader } from "../positions.ts";

/** A guard as its player knows it: how loud each position is, and what its knobs do there. */
export class PlayedGuard {
  readonly build: Build;
  readonly controls: Controls;
  /** Every position of the main switch with all else at rest and open. */
  readonly positions: readonly Settings[];
  readonly #reader: PositionReader;
  readonly #engine: ResponseEngine;
  readonly #activity: ActivityReader;
  readonly #words: ReadonlyMap<string, string>;

  constructor(build: Build) {
    this.build = build;
    this.controls = new Controls(build);
    this.positions = mainPositions(this.controls).map(({ settings }) => fullControls(build, settings));
    this.#reader = new PositionReader(build);
    this.#engine = new ResponseEngine(build, { isKept: true });
    this.#activity = new ActivityReader(build, (settings) => this.#engine.transfersIn(settings));
    this.#words = partWords(build.parts);
  }

  /** Mean level of the open strings in dB; SILENCE_DB at the least. */
  levelIn(settings: Settings): number {
    const { energies } = this.#reader.positionIn(settings, []);
    return energies.reduce((sum, matrix) => sum + powerDecibels(matrix[0]!), 0) / energies.length;
  }

  /** Hz; null where the curve does not fall by 3 dB below 20 kHz. */
  cutoffIn(settings: Settings): number | null {
    return findFeatures(this.#engine.transfersIn(settings).power()).cutoff;
  }

  /** Pots of a role that do anything in a position. */
  active(role: "volume" | "tone", position: Settings): string[] {
    const active = new Set(this.#activity.activeIn(position));
    return this.controls.potsWithRole(role).filter((name) => active.has(name));
  }

  /** "upper tone". */
  called(name: string): string {
    return this.#words.get(name) ?? name;
  }

  /** The same position with some pots at a dial. */
  turned(position: Settings, pots: readonly string[], dial: number): Settings {
    return { ...position, dials: { ...position.dials, ...Object.fromEntries(pots.map((pot) => [pot, dial])) } };
  }
}
