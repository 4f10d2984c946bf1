import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, type Settings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { curveOf } from "../../src/response/curve.ts";
import { CurveReader } from "../../src/response/curve-reader.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { solvedTransfers, type Transfers } from "../../src/response/transfers.ts";
import { hssWithBleed } from "../fixtures/circuits.ts";

const build = readBuild(hssWithBleed());
const atRest = new Controls(build).atRest;
const maker = new CircuitMaker(build);
const solved = () => solvedTransfers(maker.circuitIn(atRest), maker.sources);

/** Counts the frequencies at which all coils are solved for curves; labels and features ask for a few at a time. */
class Counted {
  solutions = 0;

  of(transfers: Transfers): Transfers {
    return {
      ...transfers,
      perSource: (frequenciesHz) => {
        if (frequenciesHz.length > 4) this.solutions += frequenciesHz.length;
        return transfers.perSource(frequenciesHz);
      },
    };
  }
}

class CountedEngine extends ResponseEngine {
  readonly counted = new Counted();

  override transfersIn(settings: Settings): Transfers {
    return this.counted.of(super.transfersIn(settings));
  }
}

describe("a curve with each coil's own beside it", () => {
  const fine = logSpaced(20, 20_000, 400);
  const coarse = logSpaced(20, 20_000, 12);

  test.each([
    ["frequencies close together", fine],
    ["frequencies far apart", coarse],
  ])("is solved once, however many coils there are: %s", (_, frequencies) => {
    const counted = new Counted();
    const { sources, magnitude } = curveOf(counted.of(solved()), frequencies, { withSources: true });
    expect(sources).toHaveLength(4);
    expect(counted.solutions).toBeGreaterThanOrEqual(frequencies.length);
    expect(counted.solutions).toBeLessThan(frequencies.length + 200);
    const alone = curveOf(solved(), frequencies);
    for (const [i, level] of magnitude.entries()) expect(level).toBeCloseTo(alone.magnitude[i]!, 9);
  });

  test("is evaluated once where it is heard from a string", () => {
    const engine = new CountedEngine(build);
    const question = { settings: [atRest], frequenciesHz: fine, withSources: true, heard: { string: 1, fret: 0 } };
    const [curve] = new CurveReader(build, engine).curvesOf(question, NO_CHECKPOINT);
    expect(curve!.sources).toHaveLength(4);
    expect(engine.counted.solutions).toBe(fine.length);
  });

  test("is the same coil by coil from polynomials as solved, at frequencies far apart too", () => {
    const engine = new ResponseEngine(build, { isKept: true });
    const quick = curveOf(engine.transfersIn(atRest), coarse, { withSources: true }).sources!;
    const slow = curveOf(solved(), coarse, { withSources: true }).sources!;
    for (const [index, { pickup, coil, magnitude, phase }] of slow.entries()) {
      expect(quick[index]).toMatchObject({ pickup, coil });
      for (let i = 0; i < coarse.length; i++) {
        expect(quick[index]!.magnitude[i]).toBeCloseTo(magnitude[i]!, 5);
        expect(quick[index]!.phase[i]).toBeCloseTo(phase[i]!, 4);
      }
    }
  });
});

describe("a curve that is solved frequency by frequency", () => {
  const frequencies = logSpaced(20, 20_000, 400);

  test("stops within a few frequencies of its caller's leaving", () => {
    const leaving = new Error("nobody waits");
    for (const asked of [1, 5, 250]) {
      const counted = new Counted();
      let checkpoints = 0;
      const checkpoint = () => {
        if (++checkpoints === asked) throw leaving;
      };
      expect(() => curveOf(counted.of(solved()), frequencies, { checkpoint })).toThrow(leaving);
      expect(counted.solutions).toBeLessThanOrEqual(Math.min(32 * (asked - 1), frequencies.length));
    }
  });

  test("comes to a checkpoint between one coil and the next", () => {
    const count = (withSources: boolean) => {
      let checkpoints = 0;
      curveOf(solved(), frequencies, { withSources, checkpoint: () => void checkpoints++ });
      return checkpoints;
    };
    expect(count(true) - count(false)).toBe(4);
  });
});
