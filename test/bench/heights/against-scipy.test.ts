import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { boundedLeastSquares } from "../../../src/bench/heights/bounded-least-squares.ts";
import { fitLaws } from "../../../src/bench/heights/fit-laws.ts";
import { gapUnder } from "../../../src/bench/heights/gaps.ts";
import { axialField, axialSlope } from "../../../src/bench/heights/magnet-pull.ts";
import { PositionReader } from "../../../src/bench/heights/positions.ts";
import type { Recorded } from "../../../src/bench/heights/recorded.ts";
import { describeWith } from "../../tools.ts";
import {
  ALONE,
  BALANCED,
  BUILD,
  LAWS,
  lowered,
  NAMES,
  NOW,
  normals,
  rowsOf,
  STRINGS,
  settingsAt,
} from "./simulated.ts";

function python(script: string, input: object): unknown {
  const { stdout, stderr, status } = spawnSync("/usr/bin/python3", ["-c", script], {
    input: JSON.stringify(input),
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}

/** Straight lines of one slope a pickup and one constant a string, by SciPy's own least squares and its covariance. */
const FIT = `
import json, sys, numpy as np
from scipy.optimize import least_squares
rows = json.load(sys.stdin)
out = []
for pickup in sorted(set(r["pickup"] for r in rows)):
    own = [r for r in rows if r["pickup"] == pickup]
    x = np.array([20 * np.log10(r["gap"]) for r in own]); y = np.array([r["level"] for r in own])
    s = np.array([r["string"] for r in own])
    f = lambda p: p[1:][s] - p[0] * x - y
    fit = least_squares(f, np.zeros(1 + s.max() + 1), x_scale="jac", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    out.append({"n": fit.x[0], "chi": 2 * fit.cost, "var": np.linalg.inv(fit.jac.T @ fit.jac)[0, 0]})
print(json.dumps(out))
`;

const BOXES = `
import json, sys, numpy as np
from scipy.optimize import least_squares
out = []
for c in json.load(sys.stdin):
    A = np.array(c["matrix"]); b = np.array(c["right"])
    f = lambda x: np.exp(0.3 * (A @ x)) - b
    fit = least_squares(f, c["start"], bounds=(c["low"], c["high"]), xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=4000)
    out.append({"x": fit.x.tolist(), "cost": 2 * fit.cost})
print(json.dumps(out))
`;

/** The magnet as loops of current along its side, each with the textbook's field on its axis, summed by quadrature. */
const LOOPS = `
import json, sys
from scipy.integrate import quad
out = []
for R, L, z in json.load(sys.stdin):
    field = lambda z: quad(lambda s: R * R / 2 / (R * R + (z + s) ** 2) ** 1.5, 0, L, epsabs=0, epsrel=1e-12)[0]
    h = 1e-6
    out.append([field(z), (field(z + h) - field(z - h)) / (2 * h)])
print(json.dumps(out))
`;

describeWith("scipy", "heights beside SciPy", () => {
  test("exponents, their errors and the scatter are those of SciPy's least squares", () => {
    const laws = [LAWS["power 1"]!, LAWS["power 1.7"]!, LAWS["power 3"]!];
    const heights = [NOW, lowered(NOW, 1.5)];
    const rows = rowsOf({
      guitar: { laws, balanced: BALANCED },
      now: NOW,
      heights,
      levers: ALONE,
      noiseDb: 0.3,
      seed: 5,
    });
    const reader = new PositionReader(BUILD);
    const recorded: Recorded = {
      pickups: NAMES,
      stringCount: STRINGS,
      positions: ALONE.map((lever) => reader.positionIn(settingsAt(lever), NAMES)),
      observations: rows.map(({ gaps, levelsDb }, index) => ({ position: index % 3, gaps, levelsDb })),
    };
    const fitted = fitLaws(recorded);
    const points = recorded.observations.flatMap(({ position, gaps, levelsDb }) =>
      levelsDb.map((level, string) => ({
        pickup: position,
        string,
        level,
        gap: gapUnder(gaps[position]!, string + 1, STRINGS),
      })),
    );
    const theirs = python(FIT, points) as { n: number; chi: number; var: number }[];
    const sigma = Math.sqrt(theirs.reduce((sum, { chi }) => sum + chi, 0) / fitted.degreesOfFreedom);
    expect(fitted.degreesOfFreedom).toBe(36 - 18 - 3);
    expect(fitted.sigmaDb / sigma).toBeCloseTo(1, 6);
    theirs.forEach(({ n, var: variance }, index) => {
      expect(fitted.exponents[index]).toBeCloseTo(n, 5);
      expect(fitted.exponentErrors[index]! / (sigma * Math.sqrt(variance))).toBeCloseTo(1, 5);
    });
  });

  test("the least squares inside a box reach what SciPy's reach, bounds held and free", () => {
    const normal = normals(17);
    const numbers = (count: number) => Array.from({ length: count }, normal);
    const cases = Array.from({ length: 30 }, () => ({
      matrix: Array.from({ length: 8 }, () => numbers(4)),
      right: numbers(8).map((value) => 1 + 0.8 * value),
      start: [0, 0, 0, 0],
      low: numbers(4).map((value) => -0.05 - Math.abs(value)),
      high: numbers(4).map((value) => 0.05 + Math.abs(value)),
    }));
    const theirs = python(BOXES, cases) as { x: number[]; cost: number }[];
    let held = 0;
    cases.forEach(({ matrix, right, start, low, high }, index) => {
      const residuals = (x: Float64Array) =>
        Float64Array.from(
          matrix,
          (row, i) => Math.exp(0.3 * row.reduce((sum, a, j) => sum + a * x[j]!, 0)) - right[i]!,
        );
      const box = { low: Float64Array.from(low), high: Float64Array.from(high) };
      const ours = boundedLeastSquares(residuals, Float64Array.from(start), box);
      expect(ours.cost).toBeLessThanOrEqual(theirs[index]!.cost * (1 + 1e-7));
      ours.unknowns.forEach((value, j) => void expect(value).toBeCloseTo(theirs[index]!.x[j]!, 4));
      held += ours.held.filter((each) => each !== 0).length;
    });
    expect(held).toBeGreaterThan(20);
  });

  test("a rod magnet's field on its axis and its slope are those of its current loops", () => {
    const cases = [
      [2.4e-3, 17e-3, 1e-3],
      [2.4e-3, 17e-3, 4e-3],
      [5e-3, 3e-3, 2e-3],
    ] as const;
    const theirs = python(LOOPS, cases) as [number, number][];
    cases.forEach(([radiusMetres, lengthMetres, z], index) => {
      const magnet = { radiusMetres, lengthMetres };
      expect(axialField(magnet, z) / theirs[index]![0]).toBeCloseTo(1, 9);
      expect(axialSlope(magnet, z) / theirs[index]![1]).toBeCloseTo(1, 5);
    });
  });
});
