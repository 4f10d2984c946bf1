import { spawnSync } from "node:child_process";
import { describe } from "vitest";

/** Debian tools that act as outside references; each maps to a command that succeeds where the tool is installed. */
const PROBES = {
  ngspice: ["ngspice", "--version"],
  sox: ["sox", "--version"],
  ffmpeg: ["ffmpeg", "-version"],
  ffprobe: ["ffprobe", "-version"],
  scipy: ["/usr/bin/python3", "-c", "import scipy, numpy"],
  shapely: ["/usr/bin/python3", "-c", "import shapely"],
  poppler: ["pdftoppm", "-v"],
  zbar: ["zbarimg", "--version"],
  chromium: ["/usr/bin/chromium", "--version"],
  nginx: ["/usr/sbin/nginx", "-v"],
} as const;

export type Tool = keyof typeof PROBES;

export function hasTool(tool: Tool): boolean {
  const [command, ...args] = PROBES[tool];
  return spawnSync(command, args, { stdio: "ignore" }).status === 0;
}

/**
 * A suite that needs an outside tool. Where the tool is absent it is skipped with a warning on a developer's machine,
 * and fails in CI, where every tool is installed and a skip would hide an unchecked number.
 */
export function describeWith(tool: Tool, title: string, suite: () => void): void {
  if (hasTool(tool)) {
    describe(title, suite);
    return;
  }
  if (process.env.CI) throw new Error(`${tool} is missing, and CI must run "${title}"`);
  console.warn(`SKIPPED: "${title}" needs ${tool}, which is not installed here`);
  describe.skip(`${title} (${tool} is not installed)`, suite);
}
