import { createInterface } from "node:readline";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../src/build-file/sweep.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { type LevelAndPhase, magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";
import type { Transfers } from "../../src/response/transfers.ts";
import { medianMilliseconds } from "./stopwatch.ts";

export interface CurvesJob {
  readonly build: object;
  readonly sweep?: RawSweep | undefined;
}

/** Milliseconds of the whole sweep, and what the process took of memory at most. */
export interface CurvesTiming {
  /** Settings that polynomials did not reproduce, so that they were solved frequency by frequency; their time is in the sweep's. */
  readonly solved: number;
  readonly levelAndPhase: number;
  readonly everything: number;
  readonly peakBytes: number;
}

/** With some forty powers of s a coefficient now and then loses more digits than polynomials may; a tenth would be no rarity. */
const MOST_SOLVED = 0.1;

function timing({ build: input, sweep }: CurvesJob): CurvesTiming {
  const build = readBuild(input);
  const settings = expandSweep(new Controls(build), sweep);
  const frequencies = logSpaced(20, 20_000, 512);
  const engineOf = () => {
    const engine = new ResponseEngine(build);
    engine.plan(settings);
    return engine;
  };
  const curveFrom = (transfers: Transfers): LevelAndPhase => {
    const quick = transfers.levelAndPhase?.(frequencies);
    if (quick) return quick;
    const values = transfers.total(frequencies);
    return { magnitude: magnitudeDb(values), phase: unwrappedPhaseDegrees(values) };
  };
  const levelAndPhase = () => {
    const engine = engineOf();
    return settings.map((state) => curveFrom(engine.transfersIn(state)));
  };
  const planned = engineOf();
  const solved = settings.filter((state) => !planned.transfersIn(state).levelAndPhase).length;
  if (solved > MOST_SOLVED * settings.length) throw new Error(`polynomials left ${solved} settings to be solved`);
  const everything = () => {
    const engine = engineOf();
    return settings.map((state) => curveOf(engine.transfersIn(state), frequencies));
  };
  return {
    solved,
    levelAndPhase: medianMilliseconds(levelAndPhase, 81, 200),
    everything: medianMilliseconds(everything, 41, 40),
    peakBytes: process.resourceUsage().maxRSS * 1024,
  };
}

for await (const line of createInterface({ input: process.stdin }))
  console.log(JSON.stringify(timing(JSON.parse(line) as CurvesJob)));
