import { expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { faultsFrom } from "../refusals.ts";

const guard = (part: object) => ({ presolder: 1, parts: { jack: { kind: "jack" }, it: part }, wires: [] });
const pot = (rest: object) => ({ kind: "pot", resistance: "250k", ...rest });

test.each([
  ["a lever's body", { kind: "switch", type: "lever-5", body: "mini-toggle" }, "it.body", /no body "mini-toggle"; /],
  [
    "a near one",
    { kind: "switch", type: "lever-5", body: "in-line-mirored" },
    "it.body",
    /did you mean "in-line-mirrored"\?/,
  ],
  [
    "one of another type",
    { kind: "switch", type: "toggle-3", body: "board" },
    "it.body",
    /no body "board"; known: "open-frame", "box"/,
  ],
  [
    "a second track",
    pot({ gangs: [{ resistance: "250k" }], body: "mini" }),
    "it.body",
    /no body "mini"; known: "stacked", "stacked-mini"/,
  ],
  ["one track", pot({ body: "stacked" }), "it.body", /no body "stacked"; known: "full-size", "mini"/],
  ["a shaft", pot({ drives: { type: "dpdt", body: "colums" } }), "it.drives", /did you mean "columns"\?/],
  ["own contacts", { kind: "switch", positions: [[["A0", "A1"]]], body: "slide" }, "it.body", /known: "block"/],
  ["a claw, which has no choice", { kind: "terminal", body: "box" }, "it.body", /unknown key "body"/],
  ["a number", { kind: "switch", type: "lever-5", body: 3 }, "it.body", /3 is none of "open-frame"/],
])("a body that does not go with its part is refused by name: %s", (_, part, path, message) => {
  const [fault, ...others] = faultsFrom(() => readBuild(guard(part)));
  expect(others).toEqual([]);
  expect(fault!.path.startsWith(`build.parts.${path}`)).toBe(true);
  expect(fault!.message).toMatch(message);
});
