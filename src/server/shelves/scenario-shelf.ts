import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseScenario, type Scenario } from "../../build-file/scenario.ts";

/** Reads every scenario of a directory, by id. @throws Error naming the file that is no scenario. */
export function readScenarios(directory: string): ReadonlyMap<string, Scenario> {
  const files = readdirSync(directory).filter((file) => file.endsWith(".json"));
  const scenarios = files.sort().map((file): [string, Scenario] => {
    try {
      const scenario = parseScenario(JSON.parse(readFileSync(join(directory, file), "utf8")));
      return [scenario.id, scenario];
    } catch (error) {
      throw new Error(`scenarios/${file}: ${(error as Error).message}`);
    }
  });
  return new Map(scenarios);
}
