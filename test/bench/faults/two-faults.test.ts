import { describe, expect, it } from "vitest";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { assembled, measured, seeded } from "./blind-trials.ts";

const build = readBuild(threeSingles());
const faults = singleFaults(build);
const named = (kind: string, lugs: string) => faults.find((each) => each.kind === kind && each.lugs.join() === lugs)!;

function explanationsFor(...names: [string, string][]) {
  const truth = names.map(([kind, lugs]) => named(kind, lugs));
  const random = seeded(7);
  const guard = editBuild(
    assembled(build, random),
    truth.flatMap(({ edits }) => edits),
  );
  return diagnose(build, { readings: measured(build, guard, random) });
}

describe("two faults at once", () => {
  it.each<[[string, string], [string, string]]>([
    [
      ["wire-open", "neck.hot,lever.A3"],
      ["coil-shorted", "bridge.hot,bridge.ground"],
    ],
    [
      ["wire-open", "volume.1,volume.case"],
      ["wire-open", "bridge.hot,lever.A1"],
    ],
    [
      ["wrong-pot-value", "volume.1,volume.3"],
      ["wire-open", "middle.hot,lever.A2"],
    ],
  ])("that show apart are named together: %o and %o", (first, second) => {
    const { explanations, considered } = explanationsFor(first, second);
    expect(considered.pairs).toBeGreaterThan(0);
    const best = [explanations[0]!, ...explanations[0]!.sameAs].map(({ faults: both }) =>
      both.map(({ kind, lugs }) => `${kind} ${lugs}`).sort(),
    );
    expect(best).toContainEqual([first.join(" "), second.join(" ")].sort());
  });

  it("are not looked for where one explains every reading", () => {
    expect(explanationsFor(["wire-open", "neck.hot,lever.A3"]).considered.pairs).toBe(0);
  });
});
