import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { medianMilliseconds } from "./stopwatch.ts";

const RUNS = 7;

function run(deck: string): void {
  const { stderr, stdout } = spawnSync("ngspice", ["-b", deck], { encoding: "utf8" });
  if (/no such vector|aborted/.test(stderr + stdout)) throw new Error(stderr.slice(0, 2000));
}

/** Milliseconds that ngspice takes for a deck, its start and end left out. @param lines given a directory for files of its own */
export function ngspiceMilliseconds(lines: (directory: string) => readonly string[]): number {
  const directory = mkdtempSync(join(tmpdir(), "presolder-bench-"));
  const timeOf = (name: string, deck: readonly string[]) => {
    const path = join(directory, name);
    writeFileSync(path, [...deck, ".end", ""].join("\n"));
    return medianMilliseconds(() => {
      run(path);
      return true;
    }, RUNS);
  };
  try {
    const idle = timeOf("empty.cir", ["empty", "R1 1 0 1", ".control", ".endc"]);
    return timeOf("deck.cir", lines(directory)) - idle;
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}
