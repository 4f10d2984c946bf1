import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";

const DIRECTORY = join(import.meta.dirname, "..", "..", "scenarios");

/** The build of every scenario, by its name. */
export const scenarioBuilds: readonly { readonly name: string; readonly build: Build }[] = readdirSync(DIRECTORY)
  .filter((file) => file.endsWith(".json"))
  .map((file) => ({
    name: file.replace(".json", ""),
    build: readBuild((JSON.parse(readFileSync(join(DIRECTORY, file), "utf8")) as { build: unknown }).build),
  }));
