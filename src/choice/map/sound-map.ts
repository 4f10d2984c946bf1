import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { camOf } from "../erb.ts";
import { SLICES } from "../slices.ts";
import type { CellSound } from "./cell-sound.ts";
import { classicalScaling, type Places } from "./classical-scaling.ts";
import { pairDistances } from "./distance.ts";
import { orient } from "./orientation.ts";
import { Smacof } from "./smacof.ts";

/** Cells laid out so that near ones sound alike, as far as two dimensions can have it. */
export interface SoundMap {
  /** In dB, about their middle. */
  readonly places: Places;
  readonly stress1: number;
  /** Correlation of brightness with x and of fullness with y, 0 to 1. */
  readonly brightness: number;
  readonly fullness: number;
  readonly steps: number;
}

/** Fuller is more of what lies under it: the fundamentals of the lower four strings; a choice, no source. */
const FULL_BELOW_HZ = 300;

function fullnessOf({ point }: CellSound): number {
  const low = point.filter((_, band) => SLICES.bands[band]!.centre < FULL_BELOW_HZ);
  return low.reduce((sum, level) => sum + level, 0) / low.length;
}

/**
 * A map under way, step by step, for a caller that does other things between.
 * @param sounds none of them silent
 */
export class MapMaking {
  readonly #sounds: readonly CellSound[];
  readonly #scaling: Smacof;

  constructor(sounds: readonly CellSound[], checkpoint: Checkpoint = NO_CHECKPOINT) {
    const points = sounds.map(({ point }) => point);
    this.#sounds = sounds;
    this.#scaling = new Smacof(pairDistances(points, checkpoint), classicalScaling(points));
  }

  get isOver(): boolean {
    return this.#scaling.isOver;
  }

  /** Share of the most steps that there may be. */
  get share(): number {
    return this.#scaling.steps / this.#scaling.mostSteps;
  }

  step(): void {
    this.#scaling.step();
  }

  /** As far as it has come. */
  get map(): SoundMap {
    const brightness = Float64Array.from(this.#sounds, (sound) => camOf(sound.brightnessHz));
    const oriented = orient(this.#scaling.places, brightness, Float64Array.from(this.#sounds, fullnessOf));
    return { ...oriented, stress1: this.#scaling.stress.stress1, steps: this.#scaling.steps };
  }
}

/** A map at once. @param sounds none of them silent */
export function soundMap(sounds: readonly CellSound[], checkpoint: Checkpoint = NO_CHECKPOINT): SoundMap {
  const making = new MapMaking(sounds, checkpoint);
  while (!making.isOver) {
    checkpoint.checkpoint();
    making.step();
  }
  return making.map;
}
