import { mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

/**
 * Runs `use` with a script of this folder bundled as the service is, since a test runner's way of loading modules costs time in
 * every call between them.
 */
export async function withBundle<T>(script: string, use: (path: string) => Promise<T>): Promise<T> {
  // Within node_modules, for packages to be found from there.
  const directory = mkdtempSync("node_modules/.bench-");
  try {
    const outfile = join(directory, "script.mjs");
    await build({
      entryPoints: [join("test/benchmarks", script)],
      outfile,
      bundle: true,
      platform: "node",
      target: "node20",
      format: "esm",
      packages: "external",
    });
    return await use(outfile);
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}
