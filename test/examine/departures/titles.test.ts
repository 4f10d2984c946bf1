import { expect, it } from "vitest";
import type { Fault } from "../../../src/bench/faults/fault.ts";
import { LugTable } from "../../../src/build-file/lugs.ts";
import { adviceFor } from "../../../src/examine/departures/advice.ts";
import { departuresOf } from "../../../src/examine/departures/departures.ts";
import { titleOf } from "../../../src/examine/departures/titles.ts";
import { USUAL_RIG } from "../../../src/examine/plan/plan.ts";
import { anyName } from "../../../src/examine/weigh/classes.ts";
import { casesOf } from "../../effort.ts";
import { trialGuards } from "../trial-guards.ts";

const faultsIn = (build: (typeof trialGuards)[number]["build"]) =>
  departuresOf(build, undefined, USUAL_RIG).flatMap(anyName);

const { build } = trialGuards.find(({ name }) => name === "two humbuckers, push-pull splits")!;
const titled = (isIt: (fault: Fault) => boolean) => titleOf(build, faultsIn(build).find(isIt)!);

it.each<[string, (fault: Fault) => boolean]>([
  ["Tone capacitor: about 47 nF instead of 22 nF", ({ message }) => message.includes("47 nF")],
  [
    "Volume: about 250 kΩ instead of 500 kΩ",
    ({ kind, message }) => kind === "wrong-pot-value" && /^The volume.*250k/.test(message),
  ],
  ["Volume: linear, not audio", ({ kind, lugs }) => kind === "wrong-taper" && lugs[0] === "volume.1"],
  [
    "Open connection: volume lug 2 (wiper) to jack tip",
    ({ kind, lugs }) => kind === "wire-open" && lugs.join() === "volume.2,jack.tip",
  ],
  [
    "Volume: works backwards, its outer lugs exchanged",
    ({ kind, lugs }) => kind === "outer-lugs-swapped" && lugs[0] === "volume.1",
  ],
  [
    "Bridge humbucker, slug coil: broken winding",
    ({ kind, lugs }) => kind === "coil-open" && lugs[0] === "bridge.slug.start",
  ],
  ["Known resistor other than told, about 140 kΩ", ({ kind }) => kind === "known-resistor"],
  ["Positions 1 and 2 exchanged", ({ kind, message }) => kind === "positions-swapped" && message.includes("1 and 2")],
  ["Switch positions counted from the other end", ({ kind }) => kind === "positions-reversed"],
])("calls a departure by what a person says: %s", (title, isIt) => {
  expect(titled(isIt)).toBe(title);
});

it.each(casesOf(trialGuards, 2))(
  "$name: no title has a code in it, and every departure says what to do",
  ({ build: each }) => {
    const codes = new LugTable(each.parts).names().filter((name) => name.includes("."));
    for (const fault of faultsIn(each)) {
      const title = titleOf(each, fault);
      expect(
        codes.filter((code) => title.includes(code)),
        title,
      ).toEqual([]);
      expect(title).toMatch(/^[A-Z0-9]/);
      expect(adviceFor(fault)).toMatch(/\.$/);
    }
  },
);
