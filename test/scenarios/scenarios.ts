import { readdirSync, readFileSync } from "node:fs";
import { parseScenario, type Scenario } from "../../src/build-file/scenario.ts";

const FOLDER = new URL("../../scenarios/", import.meta.url);

export const scenarioFiles = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".json"))
  .sort();

export function readScenario(file: string): Scenario {
  return parseScenario(JSON.parse(readFileSync(new URL(file, FOLDER), "utf8")));
}
