import { createInterface } from "node:readline";
import { meterModelOf, meterStateOf } from "../../src/bench/meter/meter-model.ts";
import { Ohmmeter } from "../../src/bench/meter/ohmmeter.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { curveFor, Guard } from "../../src/choice/guard.ts";
import { drawGuards } from "../../src/choice/tolerance/draws.ts";
import { createUniform } from "../../src/choice/uniform.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { medianMilliseconds } from "./stopwatch.ts";

export interface VariantsJob {
  readonly build: object;
  readonly variants: number;
  readonly points: number;
}

export interface VariantsTiming {
  /** A curve of each variant in one setting. */
  readonly curves: number;
  /** What a meter reads at the jack of each variant, in every position of the main switch. */
  readonly readings: number;
  readonly readingsEach: number;
}

const SEED = 1;
const ROOM_CELSIUS = 20;

function timing({ build: input, variants, points }: VariantsJob): VariantsTiming {
  const guard = new Guard(readBuild(input));
  const { build, controls } = guard;
  const frequencies = logSpaced(20, 20_000, points);
  const [setting] = expandSweep(controls, undefined, { lever: 2, tone: 6 });
  const curves = () => {
    let sum = 0;
    for (const drawn of drawGuards(guard, variants, SEED)) sum += curveFor(drawn.transfers(setting!), frequencies)[0]!;
    return sum;
  };

  const model = meterModelOf(build, ROOM_CELSIUS);
  const positions = controls.main!.table.positions.map((_, index) => index + 1);
  const states = expandSweep(controls, { [controls.main!.name]: positions }).map((each) => meterStateOf(model, each));
  const [tip, sleeve] = ["jack.tip", "jack.sleeve"].map((lug) => model.parts.lugs.indexOf(lug));
  const meter = new Ohmmeter(model);
  const readings = () => {
    const uniform = createUniform(SEED);
    let sum = 0;
    for (let variant = 0; variant < variants; variant++) {
      const varied = { ...model, ohms: model.ohms.map((ohms) => ohms * (0.8 + 0.4 * uniform())) };
      for (const state of states) {
        meter.prepare(varied, state);
        sum += meter.read(tip!, sleeve!);
      }
    }
    return sum;
  };
  return {
    curves: medianMilliseconds(curves, 5, 2),
    readings: medianMilliseconds(readings, 5, 2),
    readingsEach: states.length,
  };
}

for await (const line of createInterface({ input: process.stdin }))
  console.log(JSON.stringify(timing(JSON.parse(line) as VariantsJob)));
