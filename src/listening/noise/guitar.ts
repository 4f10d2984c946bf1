import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { ResponseEngine } from "../../response/engine.ts";
import { withFoil } from "./changed-build.ts";
import { foilLeaves } from "./foil.ts";
import { type HissDensity, hissDensity } from "./hiss.ts";
import { type HumLine, humAtJack, type Phasor } from "./hum-at-jack.ts";
import type { Level } from "./level.ts";
import type { NoiseConditions } from "./noise-conditions.ts";
import { type Playing, playingLevel, playingOn } from "./playing-level.ts";
import { type RoomLine, roomLines } from "./room.ts";
import { type Routes, routesOf } from "./routes.ts";
import { faradsPerMetreOver, HEIGHT_OVER_FOIL, openRuns } from "./runs.ts";

/** How a guard is laid and what is about its wires. */
export interface Laid {
  readonly isTwisted: boolean;
  readonly isCavityScreened: boolean;
}

export const AS_DRAWN: Laid = { isTwisted: false, isCavityScreened: false };

const UNTOUCHED: Phasor = [1, 0];

/** A guard whose noise is asked for, setting after setting. */
export class Guitar {
  readonly build: Build;
  readonly #maker: CircuitMaker;
  readonly #engine: ResponseEngine;
  readonly #routes: Routes;
  readonly #openRuns: readonly number[];
  readonly #wireField: (hz: number) => Phasor;
  #playing: Playing | undefined;

  constructor(build: Build, { isTwisted, isCavityScreened }: Laid = AS_DRAWN) {
    this.#routes = routesOf(build, { isTwisted });
    this.build = isCavityScreened ? withFoil(build, this.#routes, faradsPerMetreOver(HEIGHT_OVER_FOIL)) : build;
    this.#maker = new CircuitMaker(this.build);
    this.#engine = new ResponseEngine(this.build, { maker: this.#maker });
    this.#openRuns = openRuns(build, this.#routes, { isCavityScreened });
    this.#wireField = isCavityScreened ? foilLeaves : () => UNTOUCHED;
  }

  /** Volts RMS at the jack, line by line of the room's spectrum. */
  humIn(settings: Settings, { mainsHz, room }: Pick<NoiseConditions, "mainsHz" | "room">): HumLine[] {
    const lines: RoomLine[] = roomLines(mainsHz, room);
    return humAtJack(this.#maker, this.#routes, settings, lines, {
      openRuns: this.#openRuns,
      wireField: this.#wireField,
    });
  }

  hissIn(
    settings: Settings,
    frequenciesHz: Float64Array,
    { kelvin, amplifier }: Pick<NoiseConditions, "kelvin" | "amplifier">,
  ): HissDensity {
    return hissDensity(this.#maker, settings, frequenciesHz, kelvin, amplifier);
  }

  /** The level of the usual phrase. */
  playingIn(settings: Settings): Level {
    this.#playing ??= playingOn(this.build, this.#engine);
    return playingLevel(this.#playing, this.#engine.transfersIn(settings));
  }
}
