import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readConfig } from "../../src/config.ts";

const TEXT = readFileSync("DEVELOPERS.md", "utf8");
const quoted = [...TEXT.matchAll(/`([^`\n]+)`/g)].map(([, words]) => words!);
const camelCase = (name: string) => name.toLowerCase().replaceAll(/_(\w)/g, (_, letter) => letter.toUpperCase());

describe("DEVELOPERS", () => {
  test("names only files and folders that are there", () => {
    const paths = quoted.filter((words) => /^(src|test|public|scenarios)\/\S+$/.test(words));
    expect(paths.length).toBeGreaterThan(40);
    // What the build makes is not there before it.
    expect(paths.filter((path) => !existsSync(path) && !path.startsWith("public/built"))).toEqual([]);
  });

  test("has a row for every folder of src and every room of the server", () => {
    const folders = (path: string) =>
      readdirSync(path, { withFileTypes: true }).flatMap((entry) =>
        entry.isDirectory() ? [`${path}/${entry.name}/`] : [],
      );
    const rows = new Set([...TEXT.matchAll(/^\| `([^`]+)` \|/gm)].map(([, path]) => path!));
    expect([...folders("src"), ...folders("src/server")].filter((folder) => !rows.has(folder))).toEqual([]);
  });

  test("gives only commands that package.json has, and benches that exist", () => {
    const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> };
    const named = [...TEXT.matchAll(/npm run (\w+)/g)].map(([, name]) => name!);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
    const benches = readdirSync("test/benchmarks").filter((file) => file.endsWith(".bench.ts"));
    const asked = [...TEXT.matchAll(/npm run bench -- test\/benchmarks\/([\w-]+)/g)].map(([, name]) => name!);
    expect(asked.length).toBeGreaterThan(5);
    expect(asked.filter((name) => !benches.some((file) => file.startsWith(name)))).toEqual([]);
  });

  test("tells every variable of the environment, and no other", () => {
    const table = /\| variable \| default \| \|\n([\s\S]*?)\n\n/.exec(TEXT)![1]!;
    const told = [...table.matchAll(/^\| ([^|]+) \|/gm)].flatMap(([, cell]) => cell!.match(/[A-Z_]+/g) ?? []);
    expect(told.map(camelCase).toSorted()).toEqual(Object.keys(readConfig({})).toSorted());
  });
});
