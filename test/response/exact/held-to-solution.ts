import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings, type Settings } from "../../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { curveOf } from "../../../src/response/curve.ts";
import { CurveReader } from "../../../src/response/curve-reader.ts";
import { CURVE_DIGITS } from "../../../src/response/digits/open-points.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";
import { magnitudeDb } from "../../../src/response/level-and-phase.ts";
import { solvedTransfers } from "../../../src/response/transfers.ts";
import { Random } from "../../random.ts";
import { anySettings } from "./any-guard.ts";

export interface Worst {
  readonly decibels: number;
  readonly degrees: number;
  /** Peaks, cutoffs and hum, shown digits of levels and phases, and levels under silence, that were not the same however asked. */
  readonly differing: number;
  readonly where: string;
}

const GRID = logSpaced(20, 96_000, 300);
/** Levels beyond it are held. */
const FLOOR_DB = -150;
const WAYS = ["alone", "kept", "together"] as const;

/** Where a curve has its extremes, which is where rounding shows, and anywhere else. */
function tellingFrequencies(random: Random, level: Float64Array): Float64Array {
  const chosen = Array.from({ length: 12 }, () => 20 * 4800 ** random.next());
  for (let i = 1; i < GRID.length - 1; i++) {
    const isExtreme = (level[i]! - level[i - 1]!) * (level[i + 1]! - level[i]!) <= 0;
    if (isExtreme && chosen.length < 40) chosen.push(GRID[i]!, GRID[i]! * (1 + 0.01 * random.next()));
  }
  return Float64Array.from([...chosen, 20, 20_000, 96_000]).sort();
}

function turnBetween(one: number, other: number): number {
  const turn = Math.abs(one - other) % 360;
  return Math.min(turn, 360 - turn);
}

/** Whether two levels and phases have the same digits in an answer. */
function isShownAlike(level: number, other: number, phase: number, otherPhase: number): boolean {
  const turn = Math.round(phase * CURVE_DIGITS.phase.steps) - Math.round(otherPhase * CURVE_DIGITS.phase.steps);
  return (
    Math.round(level * CURVE_DIGITS.level.steps) === Math.round(other * CURVE_DIGITS.level.steps) &&
    turn % (360 * CURVE_DIGITS.phase.steps) === 0
  );
}

/** How far curves are off the plain solution, of a guard alone, kept, and in a sweep of two settings. */
export function worstOf(input: object, seed: number): Worst {
  const random = new Random(seed ^ 0x5eed);
  const build = readBuild(input);
  const controls = new Controls(build);
  const states = anySettings(random, input, 2).map((raw) => parseSettings(controls, raw));
  const maker = new CircuitMaker(build);
  const answers = (engine: ResponseEngine, asked: readonly Settings[], frequenciesHz: Float64Array) =>
    new CurveReader(build, engine).curvesOf({ settings: asked, frequenciesHz, withSources: false }, NO_CHECKPOINT);
  let worst: Worst = { decibels: 0, degrees: 0, differing: 0, where: "" };
  for (const [index, state] of states.entries()) {
    const coarse = magnitudeDb(new ResponseEngine(build).transfersIn(state).total(GRID));
    const frequencies = tellingFrequencies(random, coarse);
    const truth = curveOf(solvedTransfers(maker.circuitIn(state), maker.sources), frequencies);
    const ways = {
      alone: answers(new ResponseEngine(build), [state], frequencies)[0]!,
      kept: answers(new ResponseEngine(build, { isKept: true }), [state], frequencies)[0]!,
      together: answers(new ResponseEngine(build), states, frequencies)[index]!,
    };
    const hums = WAYS.map((way) => ways[way].hum);
    if (new Set(hums).size > 1)
      worst = { ...worst, differing: worst.differing + 1, where: `hum ${hums} of setting ${index}` };
    for (const way of WAYS) {
      const { magnitude, phase, peak, cutoff } = ways[way];
      if (JSON.stringify([peak, cutoff]) !== JSON.stringify([truth.peak, truth.cutoff]))
        worst = {
          ...worst,
          differing: worst.differing + 1,
          where: `${way} ${JSON.stringify([peak, cutoff, truth.peak, truth.cutoff])}`,
        };
      for (const [i, level] of truth.magnitude.entries()) {
        const where = `${way} ${index} at ${frequencies[i]} Hz, ${level} dB`;
        if ((level === -300) !== (magnitude[i] === -300)) worst = { ...worst, differing: worst.differing + 1, where };
        if (!isShownAlike(magnitude[i]!, level, phase[i]!, truth.phase[i]!))
          worst = { ...worst, differing: worst.differing + 1, where };
        if (level <= FLOOR_DB) continue;
        const decibels = Math.abs(magnitude[i]! - level);
        const degrees = turnBetween(phase[i]!, truth.phase[i]!);
        if (decibels > worst.decibels) worst = { ...worst, decibels, where };
        if (degrees > worst.degrees) worst = { ...worst, degrees };
      }
    }
  }
  return worst;
}
