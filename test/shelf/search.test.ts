import { describe, expect, it } from "vitest";
import type { Guard } from "../../src/shelf/guard.ts";
import { lineOf, markOf } from "../../src/shelf/line.ts";
import { newGuard } from "../../src/shelf/new-guard.ts";
import { found } from "../../src/shelf/search.ts";
import { BUILDS } from "./builds.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");

const line = (name: string, more: Partial<Guard> = {}) =>
  lineOf({ ...newGuard({ name, file: JSON.stringify(BUILDS.plan) }, AT), ...more });

const LINES = [
  line("Blue guard", { guitar: "Señorita", state: "wired", notes: "hums in position 2" }),
  line("Red guard", { state: "retired", file: JSON.stringify(BUILDS.long) }),
  line("Broken", { file: "{ no JSON" }),
];

const namesFor = (query: string) => found(LINES, query).map(({ name }) => name);

describe("a search of the shelf", () => {
  it.each([
    ["its name", "blue", ["Blue guard"]],
    ["words in any order", "guard RED", ["Red guard"]],
    ["a guitar without its accent", "senorita", ["Blue guard"]],
    ["a state", "retired", ["Red guard"]],
    ["its notes", "hums position", ["Blue guard"]],
    ["a pickup's type in a plan", "humbucker-medium", ["Blue guard"]],
    ["a part's label", "folk cap", ["Red guard"]],
    ["a cap's value as it is written", "0.047 uF", ["Red guard"]],
    ["the same value otherwise", "47n", ["Red guard"]],
    ["the same with the sign for micro", "0.047µF", ["Red guard"]],
    ["a pot's value", "300k", ["Red guard"]],
    ["a cap's value with a space before its unit", "47 nF", ["Red guard"]],
    ["a cap's value without its nought", ".047", ["Red guard"]],
    ["a pot's value with its unit", "300 kΩ", ["Red guard"]],
    ["the same without a space", "300kohm", ["Red guard"]],
    ["the same with a space and no unit, beside another word", "300 k retired", ["Red guard"]],
    ["a value that is another's beginning, with its unit", "30 kΩ", []],
    ["a number and a word of the notes", "2 hums", ["Blue guard"]],
    ["a number that only begins a year or another number", "guard 2", ["Blue guard"]],
    ["the beginning of another number", "20", []],
    ["the year", LINES[0]!.made.slice(0, 4), ["Blue guard", "Red guard", "Broken"]],
    ["a value without its unit", "47", ["Red guard"]],
    ["the day it was made", LINES[0]!.made, ["Blue guard", "Red guard", "Broken"]],
    ["nothing", "  ", ["Blue guard", "Red guard", "Broken"]],
    ["what is nowhere", "theremin", []],
    ["one word that is there and one that is not", "blue theremin", []],
  ])("finds guards by %s", (_, query, names) => {
    expect(namesFor(query)).toEqual(names);
  });

  it("knows nothing of the parts of a file that nobody can read, or that nests without end", () => {
    const deep = `{"presolder":1,"parts":${'{"a":'.repeat(5000)}1${"}".repeat(5000)}}`;
    expect(line("deep", { file: deep }).words).toMatch(/^deep /);
    expect(namesFor("broken")).toEqual(["Broken"]);
  });
});

describe("a line of the list", () => {
  it("has neither build file nor history, and the same mark for the same file alone", () => {
    expect(Object.keys(LINES[0]!)).not.toEqual(expect.arrayContaining(["file"]));
    expect(LINES[0]).not.toHaveProperty("history");
    expect(markOf("abc")).toBe(markOf("abc"));
    expect(new Set(["abc", "acb", "abd", "abcd", ""].map(markOf)).size).toBe(5);
  });
});
