import { expect, it } from "vitest";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { takeTitle } from "../../../src/examine/takes/take-title.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";

it("a take is told by what a person calls the knobs that differ, not by their names in the build file", () => {
  const { build } = scenarioBuilds.find(({ name }) => name === "hss-250k-or-500k")!;
  const settings = parseSettings(new Controls(build), { lever: 4, tone1: 0 }, "settings");
  expect(takeTitle(build, { settings, through: "jack", label: undefined })).toBe(
    "position 4, upper tone 0, lower tone 10, volume 10",
  );
});
