import { describe, expect, it } from "vitest";
import { dielectricOf } from "../../../src/build-file/catalogue/dielectrics.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { changeAt, driftOf } from "../../../src/choice/tolerance/drift.ts";
import { drawPatches, spreadOf } from "../../../src/choice/tolerance/spread.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const cap = (dielectric?: string) =>
  ({ kind: "cap", capacitance: 22e-9, dielectric }) as Parameters<typeof changeAt>[0];
const guardWith = (rest: object) =>
  readBuild(onePickup({ parts: { cap: { kind: "cap", capacitance: "22n", ...rest } } }));
const capOf = (build: ReturnType<typeof guardWith>, celsius?: readonly [number, number]) =>
  spreadOf(build, celsius).filter(({ part }) => part === "cap");

describe("what temperature does to a cap", () => {
  it("is what its code allows at the ends of its range and nothing at 25 °C (EIA-198: Z5U +22/−56 %, X7R ±15 %)", () => {
    expect(changeAt(cap("ceramic-z5u"), 10)).toEqual([-0.56, 0.22]);
    expect(changeAt(cap("ceramic-z5u"), 85)).toEqual([-0.56, 0.22]);
    expect(changeAt(cap("ceramic-z5u"), 25)).toEqual([-0, 0]);
    expect(changeAt(cap("ceramic-x7r"), 125)).toEqual([-0.15, 0.15]);
    expect(changeAt(cap("ceramic-z5u"), 0)).toEqual([-0.56, 0.22]);
  });

  it("is for C0G no more than 30 ppm a kelvin (EIA-198)", () => {
    const [low, high] = changeAt(cap("ceramic-c0g"), 35);
    expect(high).toBeLessThanOrEqual(30e-6 * 10 + 1e-12);
    expect(low).toBe(-high);
  });

  it("over a range is the widest within it, and of a cap of no known make nothing", () => {
    expect(driftOf(cap("ceramic-x7r"), [5, 35])).toEqual([-0.0375, 0.0375]);
    expect(driftOf(cap(), [5, 35])).toBeNull();
  });
});

describe("the draws of a cap", () => {
  it("have the dielectric's usual tolerance where the part names none, and the part's own where it does", () => {
    expect(capOf(guardWith({ dielectric: "ceramic-z5u" }))[0]).toMatchObject({ tolerance: 0.2, isDefault: true });
    expect(capOf(guardWith({ dielectric: "ceramic-z5u", tolerance: 0.01 }))[0]).toMatchObject({ tolerance: 0.01 });
    expect(capOf(guardWith({}))[0]).toMatchObject({ tolerance: 0.1, isDefault: true });
  });

  it("lie unevenly about the mark where the usual letter is Z (−20/+80 %)", () => {
    const spread = capOf(guardWith({ dielectric: "ceramic-y5v" }));
    const uniform = createUniform(3);
    const drawn = Array.from({ length: 500 }, () => drawPatches(spread, uniform)[0]!.value / 22e-9);
    const [low, high] = dielectricOf("ceramic-y5v").tolerance;
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(1 + low);
    expect(Math.max(...drawn)).toBeLessThanOrEqual(1 + high);
    expect(Math.min(...drawn)).toBeLessThan(0.83);
    expect(Math.max(...drawn)).toBeGreaterThan(1.77);
  });

  it("spread with the temperature on top of the tolerance", () => {
    const spread = capOf(guardWith({ dielectric: "ceramic-z5u" }), [10, 10]);
    const uniform = createUniform(3);
    const drawn = Array.from({ length: 2000 }, () => drawPatches(spread, uniform)[0]!.value / 22e-9);
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0.8 * 0.44);
    expect(Math.min(...drawn)).toBeLessThan(0.45);
    expect(Math.max(...drawn)).toBeGreaterThan(1.3);
  });
});
