import { expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { makePageData } from "../../../src/server/shelves/page-data.ts";
import { readScenarios } from "../../../src/server/shelves/scenario-shelf.ts";

const { guards, offer, first } = makePageData("scenarios");
const scenarios = readScenarios("scenarios");

test("the guards that come with the page read as the scenarios themselves do", () => {
  expect(guards.scenarios.map(({ id }) => id)).toEqual([...scenarios.keys()]);
  for (const { id, build, compareWith } of guards.scenarios) {
    const scenario = scenarios.get(id)!;
    expect(readBuild(build), id).toEqual(readBuild(scenario.build));
    expect(compareWith && readBuild(compareWith), id).toEqual(scenario.compareWith && readBuild(scenario.compareWith));
  }
});

test("every guard is offered by its name", () => {
  expect(offer.scenarios).toEqual(guards.scenarios.map(({ id, title }) => ({ id, title })));
  expect(offer.plans).toEqual(guards.plans.map(({ id, title }) => ({ id, title })));
});

test("every customary guard can be read", () => {
  expect(guards.plans.length).toBeGreaterThan(10);
  for (const { title, build } of guards.plans) expect(readBuild(build).title).toBe(title);
});

test("the first guard comes through JSON as it was read", () => {
  expect(JSON.parse(JSON.stringify(first))).toEqual(first);
  expect(first.build).toEqual(readBuild(scenarios.get(first.scenario.id)!.build));
  expect(offer.signals.map(({ name }) => name)).toContain(first.signal);
});
