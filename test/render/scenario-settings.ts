import { readdirSync, readFileSync } from "node:fs";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, parseSettings, type RawSettings, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { type CurvesRequest, curvesOf, type SettingCurve } from "../../src/response/curve-reader.ts";

export interface ScenarioCase {
  readonly name: string;
  readonly build: Build;
  /** The default sweep: every position × tone 0 to 10. */
  readonly settings: readonly Settings[];
}

export const WORK = { checkpoint() {} };

export function readScenario(file: string): ScenarioCase {
  const { build: input } = JSON.parse(readFileSync(`scenarios/${file}`, "utf8")) as { build: unknown };
  const build = readBuild(input);
  return { name: file.replace(/\.json$/, ""), build, settings: expandSweep(new Controls(build)) };
}

export const SCENARIOS = readdirSync("scenarios")
  .filter((file) => file.endsWith(".json"))
  .map(readScenario);

export function settingsOf(build: Build, raw: RawSettings): Settings {
  return parseSettings(new Controls(build), raw);
}

export function curveIn(build: Build, settings: Settings, frequenciesHz: Float64Array, more?: Partial<CurvesRequest>) {
  const request = { build, settings: [settings], frequenciesHz, withSources: false, ...more };
  return curvesOf(request, WORK)[0] as SettingCurve;
}
