import { readdirSync } from "node:fs";
import { dirname, extname, join } from "node:path";
import { describe, expect, test } from "vitest";

const files = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) => extname(file) === ".ts");

describe("the server", () => {
  test("has no room of fifteen files or more", () => {
    const counts = new Map<string, number>();
    for (const file of files(join("src", "server"))) counts.set(dirname(file), (counts.get(dirname(file)) ?? 0) + 1);
    expect(counts.size).toBeGreaterThan(10);
    expect([...counts].filter(([, count]) => count >= 15)).toEqual([]);
  });
});
