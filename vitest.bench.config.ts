import { defineConfig } from "vitest/config";

const OF_THE_PAGE = "test/benchmarks/page*.bench.ts";

// One file at a time: two benches side by side would time each other.
export default defineConfig({
  test: {
    fileParallelism: false,
    testTimeout: 900_000,
    disableConsoleIntercept: true,
    // Two, so that only benches of the page start a browser and a service for it.
    projects: [
      { extends: true, test: { name: "page", include: [OF_THE_PAGE], globalSetup: ["test/page/site.ts"] } },
      {
        extends: true,
        test: { name: "service", include: ["test/benchmarks/**/*.bench.ts"], exclude: [OF_THE_PAGE] },
      },
    ],
  },
});
