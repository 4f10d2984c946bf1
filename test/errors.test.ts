import { expect, test } from "vitest";
import { readBuild } from "../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../src/build-file/settings.ts";
import { faultAt, faultLine, type PresolderError, refused } from "../src/errors.ts";
import { threeSingles } from "./fixtures/circuits.ts";

function refusalOf(act: () => unknown): PresolderError {
  try {
    act();
  } catch (error) {
    return error as PresolderError;
  }
  throw new Error("expected a refusal");
}

test("a refusal says every fault behind its path, one like many", () => {
  const faults = [
    { path: "parts.volume.resistance", message: "is missing" },
    { path: "wires.3", message: "joins a lug to itself" },
  ];
  expect(refused("BUILD_INVALID", faults)).toMatchObject({
    code: "BUILD_INVALID",
    message: "parts.volume.resistance: is missing; wires.3: joins a lug to itself",
    faults,
  });
  expect(faultAt("NOT_FOUND", "id", "no such")).toEqual(refused("NOT_FOUND", [{ path: "id", message: "no such" }]));
});

test.each([
  [
    "wires to lugs that are not there",
    () => {
      const build = threeSingles();
      readBuild({ ...build, wires: Array.from({ length: 300 }, (_, n) => [`nowhere${n}.a`, `nowhere${n}.b`]) });
    },
  ],
  [
    "unknown controls",
    () => {
      const controls = new Controls(readBuild(threeSingles()));
      parseSettings(controls, Object.fromEntries(Array.from({ length: 300 }, (_, n) => [`knob${n}`, 1])));
    },
  ],
])("hundreds of %s make no detail that nobody reads to its end", (_, act) => {
  const { faults, message } = refusalOf(act);
  expect(faults.length).toBeGreaterThanOrEqual(300);
  expect(message.length).toBeLessThanOrEqual(2000);
  expect(message).toBe(faultLine(faults));
});
