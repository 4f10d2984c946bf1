import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { expandBuild, hasPlan } from "../../../src/build-file/expand.ts";
import { recognise } from "../../../src/build-file/recognise/recognise.ts";

const BY_PLAN: Record<string, unknown> = { edits: [] };

/** What is said of the example guards that are written out; those of a plan have nothing done by hand. */
const WRITTEN_OUT: Readonly<Record<string, object>> = {
  "blend-for-a-toggle": {
    plan: null,
    why: "It has two pickups and no selector switch, and every plan with more than one has a selector.",
  },
  "five-sounds-two-humbuckers": {
    plan: null,
    why: "It has two pickups, and lever is a switch of the type lever-5-four-pole, by which no plan selects.",
  },
  "came-back-wrong": {
    plan: { layout: "lever-5-two-tone", tones: [{ pickups: ["neck"] }, { pickups: ["middle"] }] },
    edits: [
      { kind: "wire-left-out", between: ["middle.hot", "lever.A2"] },
      { kind: "wire-left-out" },
      { kind: "wire-left-out", between: ["middle.ground", "volume.case"] },
      { kind: "wire-laid", between: ["middle.ground", "lever.A2"] },
      { kind: "wire-laid", between: ["middle.hot", "volume.case"] },
    ],
  },
  "spare-ground-wire": {
    plan: { layout: "toggle-3-one-volume" },
    edits: [{ kind: "wire-left-out", between: ["volume.case", "tone.case"] }],
  },
};

test.each(readdirSync("scenarios"))("the guard of %s", (file) => {
  const { build, id } = JSON.parse(readFileSync(`scenarios/${file}`, "utf8"));
  expect(id in WRITTEN_OUT).toBe(!hasPlan(build));
  const answer = recognise(expandBuild(build));
  expect(answer).toMatchObject(WRITTEN_OUT[id] ?? BY_PLAN);
  if (hasPlan(build)) expect(expandBuild({ ...build, plan: answer.plan })).toEqual(expandBuild(build));
});
