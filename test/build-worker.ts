import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const WORKER = "dist/worker.js";

function newestChange(directory: string): number {
  const entries = readdirSync(directory, { withFileTypes: true, recursive: true });
  return Math.max(
    ...entries.filter((entry) => entry.isFile()).map((e) => statSync(join(e.parentPath, e.name)).mtimeMs),
  );
}

/** Worker threads run the bundle, so tests that render need one made from the sources they test. */
export default function setup(): void {
  if (existsSync(WORKER) && statSync(WORKER).mtimeMs > newestChange("src")) return;
  execFileSync("npm", ["run", "--silent", "build:server"], { stdio: "inherit" });
}
