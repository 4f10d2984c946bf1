import { expect, it } from "vitest";
import { Controls } from "../../../src/build-file/settings.ts";
import type { Take } from "../../../src/examine/takes/take.ts";
import { takeTitle } from "../../../src/examine/takes/take-title.ts";
import { trialGuards } from "../trial-guards.ts";

const { build } = trialGuards.find(({ name }) => name === "three single coils, treble bleed")!;
const settings = new Controls(build).atRest;

it.each([
  [{ through: "jack" }, /^position 1/],
  [{ through: { pickup: "neck", coil: "coil" } }, /^small coil over .*neck.*, position 1/],
  [{ through: "jack", label: " " }, /^position 1/],
  [{ through: "jack", label: "second try " }, /^second try$/],
])("calls a take by its settings, or as the person does: %o", (take, title) => {
  expect(takeTitle(build, { settings, ...take } as Take)).toMatch(title);
});
