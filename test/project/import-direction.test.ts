import { readdirSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { describe, expect, test } from "vitest";

const SRC = resolve("src");

/**
 * What each folder of src may import. The flow runs build → wiring → network → response → filter → render → contract → server and page;
 * listening comes after the circuit and knows none; choice stands beside render, bench and measure after choice, whose fitting they use, and examine after both. The page loads nothing of contract: types only.
 */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  "build-file": [],
  wiring: ["build-file"],
  network: [],
  strings: [],
  response: ["build-file", "wiring", "network", "strings"],
  filter: [],
  audio: [],
  listening: ["build-file", "wiring", "network", "response", "strings", "filter", "audio"],
  render: ["build-file", "strings", "response", "filter", "audio", "listening"],
  choice: ["build-file", "network", "response", "filter", "audio", "listening", "drawer"],
  drawer: ["build-file"],
  measure: ["build-file", "network", "response", "filter", "audio", "choice"],
  bench: ["build-file", "wiring", "network", "response", "choice"],
  examine: ["build-file", "network", "response", "choice", "measure", "bench"],
  shelf: ["build-file", "drawer"],
  contract: ["build-file", "shelf", "audio", "listening", "render", "choice", "measure", "bench", "drawer"],
  server: [
    "build-file",
    "response",
    "audio",
    "listening",
    "render",
    "choice",
    "measure",
    "bench",
    "examine",
    "contract",
    "drawer",
  ],
  page: [
    "build-file",
    "wiring",
    "response",
    "filter",
    "audio",
    "listening",
    "render",
    "choice",
    "bench",
    "shelf",
    "contract",
    "drawer",
  ],
};

/** Files outside the flow: errors and limits serve everyone, config only the edge. */
const SHARED_FILES = [
  "errors.ts",
  "limits.ts",
  "disjoint-sets.ts",
  "bounded-map.ts",
  "checkpoint.ts",
  "csv.ts",
  "decibels.ts",
  "lengths.ts",
  "english.ts",
];

function sourceFiles(): string[] {
  return readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ts"));
}

function importsOf(file: string): string[] {
  const text = readFileSync(resolve(SRC, file), "utf8");
  return [...text.matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map(([, path]) =>
    relative(SRC, resolve(SRC, dirname(file), path!)),
  );
}

const folderOf = (path: string) => (path.includes("/") ? path.slice(0, path.indexOf("/")) : "");

describe("imports follow the flow", () => {
  const files = sourceFiles();

  test("every folder of src has its rule", () => {
    const folders = new Set(files.map(folderOf).filter((folder) => folder !== ""));
    expect([...folders].filter((folder) => !(folder in MAY_IMPORT))).toEqual([]);
  });

  test.each(Object.keys(MAY_IMPORT))("src/%s imports only what stands before it", (folder) => {
    const wrong = files
      .filter((file) => folderOf(file) === folder)
      .flatMap((file) => importsOf(file).map((target) => ({ file, target })))
      .filter(({ target }) => {
        const to = folderOf(target);
        if (to === "") return !SHARED_FILES.includes(target) && !(folder === "server" && target === "config.ts");
        return to !== folder && !MAY_IMPORT[folder]!.includes(to);
      });
    expect(wrong).toEqual([]);
  });

  test.each(Object.entries(MAY_IMPORT))("src/%s uses every permission it has", (folder, permitted) => {
    const used = new Set(
      files
        .filter((file) => folderOf(file) === folder)
        .flatMap(importsOf)
        .map(folderOf),
    );
    expect(permitted.filter((other) => !used.has(other))).toEqual([]);
  });
});
