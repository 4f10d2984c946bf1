import { spawnSync } from "node:child_process";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classicalScaling } from "../../../src/choice/map/classical-scaling.ts";
import { distanceDb, pairDistances } from "../../../src/choice/map/distance.ts";
import { Smacof, stressOf } from "../../../src/choice/map/smacof.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import { casesOf } from "../../effort.ts";
import { describeWith } from "../../tools.ts";

/** Clusters in many dimensions, as the cells of some guards are. */
function clusters(count: number, dimensions: number, seed: number): Float64Array[] {
  const uniform = createUniform(seed);
  const centres = Array.from({ length: 4 }, () => Float64Array.from({ length: dimensions }, () => 20 * uniform()));
  return Array.from({ length: count }, (_, i) => centres[i % 4]!.map((value) => value + 6 * uniform()));
}

/** A layout on a plane, put into more dimensions by turning it: columns of a Hadamard matrix are at right angles. */
function flat(layout: readonly (readonly [number, number])[]): Float64Array[] {
  return layout.map(([x, y]) => Float64Array.of(x + y, x - y, x + y, x - y).map((value) => value / 2));
}

function mapOf(points: readonly Float64Array[]): Smacof {
  const scaling = new Smacof(pairDistances(points), classicalScaling(points));
  while (!scaling.isOver) scaling.step();
  return scaling;
}

const LAYOUTS: Record<string, readonly (readonly [number, number])[]> = {
  "a square": [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ],
  "a line": Array.from({ length: 9 }, (_, i) => [i * i, 0] as const),
  "a circle": Array.from({ length: 12 }, (_, i) => [Math.cos(i / 2), Math.sin(i / 2)] as const),
  "a grid of a guard's positions and tones": Array.from(
    { length: 20 },
    (_, i) => [i % 5, 3 * Math.floor(i / 5)] as const,
  ),
};

describe("scaling", () => {
  it.each(Object.entries(LAYOUTS))("finds %s again, turned or mirrored, without stress", (_name, layout) => {
    const points = flat(layout);
    const { places, stress } = mapOf(points);
    expect(stress.stress1).toBeLessThan(1e-9);
    const found = Array.from({ length: layout.length }, (_, i) => places.subarray(2 * i, 2 * i + 2));
    for (const [i, a] of found.entries())
      for (const [j, b] of found.entries())
        expect(Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!)).toBeCloseTo(distanceDb(points[i]!, points[j]!), 9);
  });

  it("never raises the stress", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 3, max: 25 }), (seed, count) => {
        const points = clusters(count, 8, seed);
        const scaling = new Smacof(pairDistances(points), classicalScaling(points));
        let { raw } = scaling.stress;
        for (let step = 0; step < 30 && !scaling.isOver; step++) {
          scaling.step();
          expect(scaling.stress.raw).toBeLessThanOrEqual(raw * (1 + 1e-12) + 1e-20);
          raw = scaling.stress.raw;
        }
      }),
    );
  });

  it.each([0, 1, 2])("of %i cells has no stress", (count) => {
    const { places, stress, isOver } = mapOf(clusters(count, 5, 3));
    expect([places.length, isOver]).toEqual([2 * count, true]);
    expect(stress.stress1).toBeLessThan(1e-9);
  });

  it("of cells that are all the same puts them in one place", () => {
    const { places, stress } = mapOf(Array.from({ length: 6 }, () => Float64Array.of(1, 2, 3)));
    expect(Math.max(...places.map(Math.abs))).toBeLessThan(1e-9);
    expect(stress.stress1).toBe(0);
  });

  it("tells stress-1 as Kruskal has it: a distance of 1 drawn as 2 is √(1/4)", () => {
    expect(stressOf(Float64Array.of(1), Float64Array.of(0, 0, 2, 0)).stress1).toBeCloseTo(0.5, 12);
  });
});

/** Classical scaling from the doubly centred matrix of squared distances, and the least stress that a general minimiser finds. */
const OUTSIDE = `
import sys, json, numpy as np
from scipy.optimize import minimize
from scipy.spatial.distance import pdist, squareform
job = json.load(sys.stdin)
p = np.array(job["points"]); n, d = p.shape
delta = pdist(p)/np.sqrt(d)
J = np.eye(n) - 1/n
values, vectors = np.linalg.eigh(-0.5*J @ squareform(delta)**2 @ J)
x = vectors[:, [-1, -2]]*np.sqrt(np.maximum(values[[-1, -2]], 0))
i, j = np.triu_indices(n, 1)
def raw(v):
    q = v.reshape(n, 2); diff = q[i] - q[j]; apart = np.sqrt((diff**2).sum(1))
    g = np.zeros((n, 2)); pull = (2*(apart - delta)/np.maximum(apart, 1e-12))[:, None]*diff
    np.add.at(g, i, pull); np.add.at(g, j, -pull)
    return ((apart - delta)**2).sum(), g.ravel()
best = minimize(raw, x.ravel(), jac=True, method="L-BFGS-B", options={"maxiter": 5000, "ftol": 1e-14, "gtol": 1e-9})
apart = pdist(best.x.reshape(n, 2))
print(json.dumps({"classical": pdist(x).tolist(), "raw": best.fun, "stress1": float(np.sqrt(best.fun/(apart**2).sum()))}))
`;

describeWith("scipy", "scaling beside NumPy and SciPy", () => {
  it.each(casesOf([1, 2, 3], 1))(
    "has the classical start of an eigenvalue solver and the stress of a minimiser, clusters %i",
    (seed) => {
      const points = clusters(24, 12, seed);
      const { status, stdout, stderr } = spawnSync("/usr/bin/python3", ["-c", OUTSIDE], {
        input: JSON.stringify({ points: points.map((each) => [...each]) }),
        encoding: "utf8",
      });
      expect(status, stderr).toBe(0);
      const outside = JSON.parse(stdout) as { classical: number[]; raw: number; stress1: number };
      const start = classicalScaling(points);
      const apart = pairDistances(Array.from({ length: 24 }, (_, i) => start.slice(2 * i, 2 * i + 2)));
      for (const [pair, distance] of outside.classical.entries())
        expect(apart[pair]! * Math.SQRT2).toBeCloseTo(distance, 8);
      const { stress } = mapOf(points);
      // Majorisation creeps at the end: it stops where a step gains next to nothing.
      expect(stress.raw).toBeLessThan(outside.raw * 1.001);
      expect(stress.stress1).toBeCloseTo(outside.stress1, 3);
    },
  );
});
