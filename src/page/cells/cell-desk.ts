import { BoundedMap } from "../../bounded-map.ts";
import type { Build } from "../../build-file/schema.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import type { PassesForOne } from "../../choice/compare/verdict.ts";
import { type Added, addedByGuards, guardsThatHave } from "../../choice/map/adds.ts";
import type { ToneStops } from "../../choice/map/cell-settings.ts";
import type { CellSound } from "../../choice/map/cell-sound.ts";
import { equalPairs, equalsOf } from "../../choice/map/equal-sounds.ts";
import { type Cover, fewestGuards } from "../../choice/map/fewest-guards.ts";
import { equalGroups } from "../../choice/map/groups.ts";
import { MapMaking, type SoundMap } from "../../choice/map/sound-map.ts";
import type { Playing } from "../../render/playing.ts";
import { breath } from "../dom/breath.ts";
import { type CellFigures, cellFigures } from "./cell-figures.ts";
import { type GuardCells, guardCells } from "./guard-cells.ts";

export interface MapQuestion {
  /** Which are known by their place in this list. */
  readonly builds: readonly Build[];
  readonly tones: ToneStops;
  readonly playing: Playing;
}

/** One dot of the map. */
export interface MappedCell {
  readonly guard: number;
  readonly settings: RawSettings;
  readonly brightnessHz: number;
}

export interface MapTold extends SoundMap {
  readonly cells: readonly MappedCell[];
  /** How many cells give no sound and are not on the map. */
  readonly silent: number;
  /** Guards of which not every switch is gone through. */
  readonly cut: readonly number[];
}

/** What passes for what, among the cells of the latest map. */
export interface EqualsTold {
  /** Of every cell those that pass for it. */
  readonly equals: readonly (readonly number[])[];
  readonly groups: readonly (readonly number[])[];
  readonly added: readonly Added[];
}

/** @param share 0 to 1 */
export type Progress = (share: number) => void;

/** Two million pairs, 16 MB, and some seconds of a phone's time. */
export const MOST_CELLS = 2000;
const MOST_KEPT_GUARDS = 600;
/** Of the time that a map of a thousand cells takes. */
const SHARE_OF_SOUNDS = 0.5;
const STEPS_AT_ONCE = 5;

/** What somebody else has asked for meanwhile is wanted instead. */
export class Superseded extends Error {}

function expectFew(count: number): void {
  if (count <= MOST_CELLS) return;
  throw new RangeError(`${count} cells are too many for one map; expected at most ${MOST_CELLS}: choose fewer guards`);
}

/** Sounds of cells, their figures and their map, worked out beside the page's own thread. */
export class CellDesk {
  readonly #kept = new BoundedMap<string, GuardCells>(MOST_KEPT_GUARDS);
  #latest = 0;
  #sounds: readonly CellSound[] = [];
  #guards: readonly number[] = [];
  #guardCount = 0;
  #equals: readonly (readonly number[])[] = [];

  figures(build: Build, settings: RawSettings, playing: Playing): CellFigures {
    return cellFigures(build, settings, playing);
  }

  /** A map of every cell of some guards; the one before is given up. @throws RangeError for too many cells */
  async map(question: MapQuestion, progress: Progress): Promise<MapTold> {
    this.#latest += 1;
    const own = this.#latest;
    const pause = async (share: number) => {
      progress(share);
      await breath();
      if (own !== this.#latest) throw new Superseded("another map was asked for");
    };
    const all: GuardCells[] = [];
    for (const build of question.builds) {
      all.push(this.#cellsOf(build, question));
      await pause((SHARE_OF_SOUNDS * all.length) / question.builds.length);
    }
    const cells = all.flatMap(({ sounding }, guard) => sounding.map((cell) => ({ guard, ...cell })));
    expectFew(cells.length);
    const sounds = cells.map(({ sound }) => sound);
    const map = await laidOut(sounds, (share) => pause(SHARE_OF_SOUNDS + (1 - SHARE_OF_SOUNDS) * share));
    this.#sounds = sounds;
    this.#guards = cells.map(({ guard }) => guard);
    this.#guardCount = question.builds.length;
    return {
      ...map,
      cells: cells.map(({ guard, settings, sound }) => ({ guard, settings, brightnessHz: sound.brightnessHz })),
      silent: all.reduce((sum, { silent }) => sum + silent, 0),
      cut: all.flatMap(({ isCut }, guard) => (isCut ? [guard] : [])),
    };
  }

  /** Which cells of the latest map pass for one another. */
  equals(passes: PassesForOne): EqualsTold {
    const pairs = equalPairs(this.#sounds, passes);
    const count = this.#sounds.length;
    this.#equals = equalsOf(count, pairs);
    return {
      equals: this.#equals,
      groups: equalGroups(count, pairs),
      added: addedByGuards(this.#guards, this.#equals, this.#guardCount),
    };
  }

  /** The fewest guards that have these cells of the latest map, or some that pass for them. */
  fewest(cells: readonly number[]): Cover {
    return fewestGuards(guardsThatHave(cells, this.#guards, this.#equals));
  }

  #cellsOf(build: Build, { tones, playing }: MapQuestion): GuardCells {
    const key = JSON.stringify([tones, playing, build]);
    const kept = this.#kept.get(key);
    if (kept) return kept;
    const cells = guardCells(build, tones, playing);
    this.#kept.set(key, cells);
    return cells;
  }
}

async function laidOut(sounds: readonly CellSound[], pause: Progress): Promise<SoundMap> {
  const making = new MapMaking(sounds);
  while (!making.isOver) {
    await pause(making.share);
    for (let step = 0; step < STEPS_AT_ONCE && !making.isOver; step++) making.step();
  }
  return making.map;
}
