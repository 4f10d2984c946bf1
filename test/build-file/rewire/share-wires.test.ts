import fc from "fast-check";
import { expect, test } from "vitest";
import { type Lack, shareWires } from "../../../src/build-file/rewire/share-wires.ts";

/** The most that can be saved, by trying every lack, or none, for every wire. */
function mostSaved(lacks: readonly Lack[], nets: readonly (readonly number[])[]): number {
  const [first, ...rest] = nets;
  if (!first) return 0;
  const without = mostSaved(lacks, rest);
  const withIt = lacks.flatMap((lack, index) =>
    first.includes(lack.net) ? [lack.saves + mostSaved(lacks.toSpliced(index, 1), rest)] : [],
  );
  return Math.max(without, ...withIt);
}

test("wires are shared out so that no other sharing saves more joints", () => {
  const net: fc.Arbitrary<number> = fc.nat(3);
  const lack = fc.record({ net, saves: fc.constantFrom(1, 2) });
  const options = fc.uniqueArray(net, { minLength: 1, maxLength: 2 });
  fc.assert(
    fc.property(fc.array(lack, { maxLength: 5 }), fc.array(options, { maxLength: 5 }), (lacks, nets) => {
      const left = [...lacks].sort((a, b) => b.saves - a.saves);
      const saved = shareWires(lacks, nets).map((served, wire) => {
        if (served === undefined) return 0;
        expect(nets[wire]!.includes(served)).toBe(true);
        const at = left.findIndex((each) => each.net === served);
        return left.splice(at, 1)[0]!.saves;
      });
      expect(saved.reduce<number>((sum, each) => sum + each, 0)).toBe(mostSaved(lacks, nets));
    }),
    { numRuns: 500 },
  );
});

test("a wire that could serve two nets gives way to one that could serve only one of them", () => {
  const lacks = [
    { net: 1, saves: 2 },
    { net: 2, saves: 1 },
  ];
  expect(shareWires(lacks, [[1, 2], [1]])).toEqual([2, 1]);
});
