import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { readScenario, scenarioFiles } from "../scenarios/scenarios.ts";

/** The build of every scenario, by its name. */
export const scenarioBuilds: readonly { readonly name: string; readonly build: Build }[] = scenarioFiles.map(
  (file) => ({
    name: file.replace(".json", ""),
    build: readBuild(readScenario(file).build),
  }),
);
