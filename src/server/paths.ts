import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The package's directory, whether this code runs from `src/` or from the bundle in `dist/`. */
function findPackageRoot(): string {
  let directory = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(directory, "package.json"))) {
    const parent = dirname(directory);
    if (parent === directory) throw new Error("package.json is missing: the service must run from its package");
    directory = parent;
  }
  return directory;
}

const ROOT = findPackageRoot();

export const PATHS = {
  packageFile: join(ROOT, "package.json"),
  publicFiles: join(ROOT, "public"),
  icon: join(ROOT, "public", "icon.svg"),
  page: join(ROOT, "public", "index.html"),
  scenarios: join(ROOT, "scenarios"),
  workerEntry: join(ROOT, "dist", "worker-entry.cjs"),
  limits: join(ROOT, "dist", "limits.json"),
  workerCode: join(ROOT, "dist", "worker.js"),
} as const;
