import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { defineConfig } from "vitest/config";

/** What only `--mode all` runs: what takes long, and stands apart from what most changes touch. */
const LONG = "test/**/*.all.test.ts";

/** Those, and the files that take a sample where they could go through all. */
function filesOfAll(): string[] {
  const files = readdirSync("test", { recursive: true, encoding: "utf8" }).map((file) => join("test", file));
  const takesSample = (file: string) => readFileSync(file, "utf8").includes('/effort.ts"');
  return files.filter((file) => file.endsWith(".all.test.ts") || (file.endsWith(".test.ts") && takesSample(file)));
}

export default defineConfig(({ mode }) => {
  // Each project reads this file again, and then under the mode of every test.
  process.env.EFFORT ??= mode;
  const { EFFORT } = process.env;
  const isThorough = EFFORT === "all";
  const files = isThorough ? filesOfAll() : ["test/**/*.test.ts"];
  const isOfPage = (file: string) => file.startsWith(join("test", "page"));
  return {
    test: {
      globalSetup: ["test/build.ts"],
      // For a machine with other things to do: what waits, waits for something to happen, and goes on at once.
      testTimeout: 180_000,
      hookTimeout: 180_000,
      expect: { poll: { timeout: 20_000 } },
      env: { EFFORT },
      // Files share a process, so that what they import is loaded once. So no module of the tests may keep anything between files.
      isolate: false,
      maxWorkers: 2,
      exclude: isThorough ? [] : [LONG],
      // Two, so that only runs that touch the page start a browser and a service for it.
      projects: [
        {
          extends: true,
          test: {
            name: "page",
            // A browser whose frames are late on a machine under load may lose a click; what is broken fails twice.
            retry: 1,
            include: isThorough ? files.filter(isOfPage) : ["test/page/**/*.test.ts"],
            globalSetup: ["test/page/site.ts"],
          },
        },
        {
          extends: true,
          test: {
            name: "service",
            include: files,
            exclude: ["test/page/**", "test/benchmarks/**", ...(isThorough ? [] : [LONG])],
          },
        },
      ],
    },
  };
});
