import { Controls, parseSettings } from "../../../build-file/settings.ts";
import { expandSweep } from "../../../build-file/sweep.ts";
import type { NoiseAnswer, NoiseBody } from "../../../contract/noise.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import { USUAL_TEMPERATURE_KELVIN } from "../../../listening/noise/amplifier.ts";
import { NOISE_BASIS } from "../../../listening/noise/basis.ts";
import { noiseAnswer } from "../../../listening/noise/noise-answer.ts";
import { mainPositions, type NoiseQuestion, noiseTold } from "../../../listening/noise/noise-told.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { amplifierOf, expectFewSettings, roomOf } from "./noise-wish.ts";

function read({ sweep, settings: raw = {}, hum, field, amplifier, ...body }: NoiseBody): NoiseQuestion {
  const build = readBuildAt("build", body.build);
  const controls = new Controls(build);
  const settings = sweep ? expandSweep(controls, sweep, raw) : mainPositions(build, parseSettings(controls, raw));
  expectFewSettings(settings.length);
  const conditions = {
    mainsHz: hum === "50" ? 50 : 60,
    room: roomOf(field),
    kelvin: USUAL_TEMPERATURE_KELVIN,
    amplifier: amplifierOf(amplifier, build),
  } as const;
  return { build, settings, conditions };
}

/** What was asked for comes back without the rounding of its unit. */
const inUnit = (value: number) => Number(value.toPrecision(12));

function run(question: NoiseQuestion, context: JobContext): NoiseAnswer {
  const { mainsHz, room, amplifier } = question.conditions;
  const told = noiseTold(question, context);
  return {
    answer: noiseAnswer(told),
    hum: mainsHz === 50 ? "50" : "60",
    field: {
      microtesla: inUnit(room.fluxDensity * 1e6),
      voltsPerMetre: room.electricField,
      harmonics: room.harmonics,
    },
    amplifier: { nanovolts: inUnit(amplifier.voltage * 1e9), picoamperes: inUnit(amplifier.current * 1e12) },
    ...told,
    basis: NOISE_BASIS,
  };
}

export const noiseJob = { read, run, size: () => "large", gate: "render" } satisfies Job<NoiseQuestion, NoiseAnswer>;
