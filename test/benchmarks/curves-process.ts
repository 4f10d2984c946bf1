import { createInterface } from "node:readline";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../src/build-file/sweep.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { medianMilliseconds } from "./stopwatch.ts";

export interface CurvesJob {
  readonly build: object;
  readonly sweep?: RawSweep | undefined;
}

/** Milliseconds of the whole sweep, and what the process took of memory at most. */
export interface CurvesTiming {
  readonly levelAndPhase: number;
  readonly everything: number;
  readonly peakBytes: number;
}

function timing({ build: input, sweep }: CurvesJob): CurvesTiming {
  const build = readBuild(input);
  const settings = expandSweep(new Controls(build), sweep);
  const frequencies = logSpaced(20, 20_000, 512);
  const engineOf = () => {
    const engine = new ResponseEngine(build);
    engine.plan(settings);
    return engine;
  };
  const levelAndPhase = () => {
    const engine = engineOf();
    return settings.map((state) => engine.transfersIn(state).levelAndPhase?.(frequencies));
  };
  if (levelAndPhase().some((curve) => !curve)) throw new Error("a setting was not answered by polynomials");
  const everything = () => {
    const engine = engineOf();
    return settings.map((state) => curveOf(engine.transfersIn(state), frequencies));
  };
  return {
    levelAndPhase: medianMilliseconds(levelAndPhase, 81, 200),
    everything: medianMilliseconds(everything, 41, 40),
    peakBytes: process.resourceUsage().maxRSS * 1024,
  };
}

for await (const line of createInterface({ input: process.stdin }))
  console.log(JSON.stringify(timing(JSON.parse(line) as CurvesJob)));
