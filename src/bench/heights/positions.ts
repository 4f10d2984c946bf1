import type { Build } from "../../build-file/schema.ts";
import { Controls, rawSettings, type Settings } from "../../build-file/settings.ts";
import { kPowerGain } from "../../choice/slices.ts";
import { coilPlaces, stringSetOf } from "../../response/coil-places.ts";
import { ResponseEngine } from "../../response/engine.ts";
import { type HeardWindow, openStringEnergies } from "../../response/open-strings.ts";
import type { Position } from "./recorded.ts";

/** The second that a string's level is taken over, after the plectrum's click; `/api/string-levels` measures the same. */
export const HEARD: HeardWindow = { fromSeconds: 0.05, toSeconds: 1.05 };

/** Settings of a build as positions: what each pickup gives there on every open string, weighted as loudness is. */
export class PositionReader {
  readonly controls: Controls;
  readonly stringCount: number;
  readonly #build: Build;
  readonly #engine: ResponseEngine;

  constructor(build: Build) {
    this.#build = build;
    this.#engine = new ResponseEngine(build);
    this.controls = new Controls(build);
    this.stringCount = stringSetOf(build).strings.length;
  }

  /** @param movable pickups that are groups of their own; all others make one more, the last */
  positionIn(settings: Settings, movable: readonly string[]): Position {
    const transfers = this.#engine.transfersIn(settings);
    const groupOf = transfers.sources.map(({ pickup }) => {
      const index = movable.indexOf(pickup);
      return index < 0 ? movable.length : index;
    });
    const energies = openStringEnergies({
      transfers,
      places: coilPlaces(this.#build, transfers.sources),
      strings: stringSetOf(this.#build),
      groupOf,
      groupCount: movable.length + 1,
      window: HEARD,
      weight: kPowerGain,
    });
    return { settings, label: this.#labelOf(settings), energies };
  }

  /** "position 2, tone1 7": the main switch and whatever else is not at rest. */
  #labelOf(settings: Settings): string {
    const { main } = this.controls;
    const atRest = rawSettings(this.controls, this.controls.atRest);
    const others = Object.entries(rawSettings(this.controls, settings)).filter(
      ([name, value]) => name !== main?.name && value !== atRest[name],
    );
    const position = main ? [`position ${settings.switches[main.name] ?? 1}`] : [];
    return [...position, ...others.map(([name, value]) => `${name} ${value}`)].join(", ") || "as built";
  }
}
