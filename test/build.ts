import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const BUNDLES = ["dist/worker.js", "dist/main.js", "public/index.html"];

function newestChange(directory: string): number {
  const entries = readdirSync(directory, { withFileTypes: true, recursive: true });
  return Math.max(
    ...entries.filter((entry) => entry.isFile()).map((e) => statSync(join(e.parentPath, e.name)).mtimeMs),
  );
}

/** Worker threads, services in processes of their own and the page run bundles, so tests need those of the sources they test. */
export default function setup(): void {
  const newest = newestChange("src");
  if (BUNDLES.every((bundle) => existsSync(bundle) && statSync(bundle).mtimeMs > newest)) return;
  execFileSync(process.execPath, ["src/bundle.mjs"], { stdio: "inherit" });
}
