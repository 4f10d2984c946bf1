import { aWeight } from "../../audio/a-weighting.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Guitar } from "./guitar.ts";
import type { HumLine, Phasor } from "./hum-at-jack.ts";
import { type Level, levelOf, togetherByPower } from "./level.ts";
import type { NoiseConditions } from "./noise-conditions.ts";

/** Hum and hiss at the amplifier's input in one setting. */
export interface PositionNoise {
  readonly playing: Level;
  readonly coils: Level;
  readonly loops: Level;
  readonly runs: Level;
  /** Coils and loops with their signs, runs by power. */
  readonly hum: Level;
  /** Of the guitar's circuit with cable and input resistor. */
  readonly thermal: Level;
  readonly amplifier: Level;
  readonly hiss: Level;
  /** What the wires enclose as the jack sees it, m², at the mains' frequency. */
  readonly loopArea: number;
}

const LOWEST_HZ = 20;
const HIGHEST_HZ = 20_000;
const POINTS = 240;
/** Evenly spaced in pitch; the density is taken as straight from one to the next. */
const FREQUENCIES_HZ = Float64Array.from(
  { length: POINTS },
  (_, index) => LOWEST_HZ * (HIGHEST_HZ / LOWEST_HZ) ** (index / (POINTS - 1)),
);
const WIDTHS_HZ = FREQUENCIES_HZ.map(
  (hz, index) => ((FREQUENCIES_HZ[index + 1] ?? hz) - (FREQUENCIES_HZ[index - 1] ?? hz)) / 2,
);
const WEIGHTS = FREQUENCIES_HZ.map(aWeight);

const powerOf = ([re, im]: Phasor) => re * re + im * im;

function linesLevel(lines: readonly HumLine[], powerAt: (line: HumLine) => number): Level {
  const heard = lines.filter(({ hz }) => hz >= LOWEST_HZ && hz <= HIGHEST_HZ);
  return levelOf(heard.map((line) => ({ power: powerAt(line), weight: aWeight(line.hz) })));
}

function densityLevel(density: Float64Array): Level {
  return levelOf(
    Array.from(density, (power, index) => ({ power: power * WIDTHS_HZ[index]!, weight: WEIGHTS[index]! })),
  );
}

/** Power of a line of hum: coils and loops are of one field. */
export function humPower({ coils, loops, runs }: HumLine): number {
  return powerOf([coils[0] + loops[0], coils[1] + loops[1]]) + powerOf(runs);
}

export function positionNoise(guitar: Guitar, settings: Settings, conditions: NoiseConditions): PositionNoise {
  const lines = guitar.humIn(settings, conditions);
  const { circuit, amplifier } = guitar.hissIn(settings, FREQUENCIES_HZ, conditions);
  const [thermal, own] = [densityLevel(circuit), densityLevel(amplifier)];
  const [first] = lines;
  const perArea = 2 * Math.PI * first!.hz * conditions.room.fluxDensity;
  return {
    playing: guitar.playingIn(settings),
    coils: linesLevel(lines, ({ coils }) => powerOf(coils)),
    loops: linesLevel(lines, ({ loops }) => powerOf(loops)),
    runs: linesLevel(lines, ({ runs }) => powerOf(runs)),
    hum: linesLevel(lines, humPower),
    thermal,
    amplifier: own,
    hiss: togetherByPower([thermal, own]),
    loopArea: perArea > 0 ? Math.sqrt(powerOf(first!.loops)) / perArea : 0,
  };
}
