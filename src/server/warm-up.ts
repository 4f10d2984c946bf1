import { readBuild } from "../build/read-build.ts";
import { Controls, expandSweep } from "../build/settings.ts";
import { NO_CHECKPOINT } from "../render/checkpoint.ts";
import { curvesOf } from "../render/curves.ts";
import { logSpaced } from "../response/frequencies.ts";
import { curvesAnswer } from "./curve-answer.ts";
import { PATHS } from "./paths.ts";
import { readScenarios } from "./scenario-shelf.ts";

/** Enough settings for the machine code to be there, and few enough not to be noticed. */
const SETTINGS = 12;

/** Computes a few curves before anybody asks: the first ones take ten times as long as any later one. */
export function warmUp(): void {
  const [scenario] = readScenarios(PATHS.scenarios).values();
  if (!scenario) return;
  const build = readBuild(scenario.build);
  const settings = expandSweep(new Controls(build)).slice(0, SETTINGS);
  const frequenciesHz = logSpaced(20, 20_000, 512);
  const curves = curvesOf({ build, settings, frequenciesHz, withSources: false }, NO_CHECKPOINT);
  JSON.stringify(curvesAnswer(frequenciesHz, curves));
}
