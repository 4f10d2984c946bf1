import fc from "fast-check";
import { expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { type Rewiring, rewire } from "../../../src/build-file/rewire/rewire.ts";
import { effort } from "../../effort.ts";
import { BenchTop, netsOf } from "./bench-top.ts";
import { fewestJoints } from "./fewest-joints.ts";
import { jointsOneByOne } from "./joint-by-joint.ts";
import { workbenchOf } from "./pieces.ts";
import { buildFileOf, guardPairs, type SmallGuard } from "./small-guards.ts";

function rewired({ from, to }: { from: SmallGuard; to: SmallGuard }): Rewiring {
  return rewire(readBuild(buildFileOf(from)), readBuild(buildFileOf(to)));
}

test("no way for every piece of up to eight wires to lie takes fewer joints", () => {
  fc.assert(
    fc.property(guardPairs(8), (pair) => {
      const { steps } = rewired(pair);
      expect(fewestJoints(workbenchOf(pair.from, pair.to), steps.length)).toBe(steps.length);
    }),
    { numRuns: effort(150, 1500) },
  );
});

test("leads twisted together in a loop are taken apart where both are of use", () => {
  const parts = {
    pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H" } } },
    cap: { kind: "cap", capacitance: "22n" },
    pot: { kind: "pot", resistance: "250k" },
    jack: { kind: "jack" },
  };
  const loop = [
    { from: "cap.a", to: "cap.b", how: "leg" },
    { from: "pot.1", to: "cap.a", how: "wire" },
    { from: "pot.1", to: "cap.b", how: "wire" },
  ];
  const more = [
    { from: "jack.tip", to: "pot.1", how: "wire" },
    { from: "pot.2", to: "pot.1", how: "wire" },
  ];
  const [from, to] = [loop, [...loop, ...more]].map((wires) => readBuild({ presolder: 1, parts, wires }));
  expect(rewire(from!, to!).steps.map((step) => [step.do, step.at])).toEqual([
    ["open", "cap.b"],
    ["make", "pot.2"],
    ["make", "jack.tip"],
  ]);
});

test("searching joint by joint finds no fewer, where few are needed", () => {
  let [found, joints] = [0, 0];
  fc.assert(
    fc.property(guardPairs(3), (pair) => {
      const workbench = workbenchOf(pair.from, pair.to);
      const { steps } = rewired(pair);
      fc.pre(workbench.splices.length === 0 && steps.length <= effort(3, 4));
      expect(jointsOneByOne(workbench, steps.length)).toBe(steps.length);
      found++;
      joints += steps.length;
    }),
    { numRuns: effort(20, 50) },
  );
  // Not all of the pairs were the same guard twice.
  expect(joints).toBeGreaterThan(found / 4);
});

test("steps can be followed and lead to the nets wanted, and home again, on any small guards", () => {
  fc.assert(
    fc.property(guardPairs(8), ({ from, to }) => {
      const [found, wanted] = [from, to].map((guard) => readBuild(buildFileOf(guard))) as [never, never];
      const rewiring = rewire(found, wanted);
      const bench = new BenchTop(found, rewiring);
      const first = bench.joins();
      bench.do(rewiring.steps, "open");
      expect(bench.nets()).toEqual(netsOf(wanted));
      expect(bench.dangling()).toEqual([]);
      expect(netsOf(rewiring.result)).toEqual(netsOf(wanted));
      bench.do(rewiring.home, "make");
      expect(bench.joins()).toEqual(first);
    }),
    { numRuns: effort(200, 1500) },
  );
});
