import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { faultsFrom } from "../build-file/refusals.ts";
import { onePickup } from "../fixtures/circuits.ts";

type Wires = unknown[];

const original = onePickup() as { wires: Wires };
const to = (lugs: readonly [string, string], details: object): Wires =>
  original.wires.map((wire) =>
    JSON.stringify(wire) === JSON.stringify(lugs) ? { from: lugs[0], to: lugs[1], ...details } : wire,
  );

const frequencies = logSpaced(20, 20_000, 60);

function levels(changes: Parameters<typeof onePickup>[0]): Float64Array {
  const build = readBuild(onePickup(changes));
  const { atRest } = new Controls(build);
  return Float64Array.from(curveOf(new ResponseEngine(build).transfersIn(atRest), frequencies).magnitude);
}

function expectSame(a: Float64Array, b: Float64Array): void {
  for (const [index, level] of a.entries()) expect(level).toBeCloseTo(b[index]!, 7);
}

const JACK = ["volume.2", "jack.tip"] as const;

describe("a screened wire", () => {
  const screened = { kind: "screened", length: "2m", capacitance: "150pF/m" };

  it("to the jack is so much more cable", () => {
    const cable = { length: "1m", capacitance: "800pF" };
    expectSame(levels({ wires: to(JACK, screened) }), levels({ rest: { cable } }));
  });

  it("anywhere is a capacitor from its net to ground", () => {
    const hot = ["pickup.hot", "volume.3"] as const;
    const parts = { stray: { kind: "cap", capacitance: "300p" } };
    const wires = [...original.wires, ["stray.a", "volume.3"], ["stray.b", "jack.sleeve"]];
    expectSame(levels({ wires: to(hot, screened) }), levels({ parts, wires }));
  });

  it("of unknown make has 100 pF a metre, and between two grounds nothing", () => {
    const usual = { kind: "screened", length: "3m" };
    expectSame(levels({ wires: to(JACK, usual) }), levels({ rest: { cable: { length: "1m", capacitance: "800pF" } } }));
    expectSame(levels({ wires: to(["volume.case", "jack.sleeve"], usual) }), levels({}));
  });

  it("that is not screened, or has no length, is refused by its field", () => {
    const faults = (details: object) => faultsFrom(() => readBuild(onePickup({ wires: to(JACK, details) })));
    expect(faults({ kind: "screened" })).toEqual([
      { path: "build.wires.2.length", message: expect.stringContaining("expected the length of a screened wire") },
    ]);
    expect(faults({ kind: "cloth", capacitance: "100pF/m" })).toEqual([
      { path: "build.wires.2.capacitance", message: expect.stringContaining("expected none") },
    ]);
    expect(faults({ kind: "silk" })[0]!.message).toMatch(/cloth.*plastic.*bare.*screened/);
  });
});
