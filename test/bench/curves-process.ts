import { createInterface } from "node:readline";
import { readBuild } from "../../src/build/read-build.ts";
import { Controls, expandSweep } from "../../src/build/settings.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { curveOf, ResponseEngine } from "../../src/response/responses.ts";
import { medianMilliseconds } from "./stopwatch.ts";

export interface CurvesTiming {
  readonly levelAndPhase: number;
  readonly everything: number;
}

function timing(input: unknown): CurvesTiming {
  const build = readBuild(input);
  const settings = expandSweep(new Controls(build));
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
  };
}

for await (const line of createInterface({ input: process.stdin }))
  console.log(JSON.stringify(timing(JSON.parse(line))));
