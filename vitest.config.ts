import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    globalSetup: ["test/build.ts"],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Files share a process, so that what they import is loaded once. So no module of the tests may keep anything between files.
    isolate: false,
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: { name: "page", include: ["test/page/**/*.test.ts"], globalSetup: ["test/page/site.ts"] },
      },
      {
        extends: true,
        test: { name: "service", include: ["test/**/*.test.ts"], exclude: ["test/page/**", "test/benchmarks/**"] },
      },
    ],
  },
});
