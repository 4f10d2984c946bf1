import { defineConfig } from "vitest/config";

// One file at a time: two benches side by side would time each other.
export default defineConfig({
  test: {
    include: ["test/benchmarks/**/*.bench.ts"],
    fileParallelism: false,
    testTimeout: 900_000,
    disableConsoleIntercept: true,
  },
});
