import { execFileSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { heatedJoint, spreadingResistance } from "../../../src/bench/sheet/heat/bodies.ts";
import { heatOf } from "../../../src/bench/sheet/heat/heat.ts";
import { DEFAULT_IRON, flowCelsius } from "../../../src/bench/sheet/heat/iron.ts";
import { heatFor, type ThermalNetwork } from "../../../src/bench/sheet/heat/thermal-model.ts";
import { describeWith } from "../../tools.ts";

describe("the lumped model of heat", () => {
  it("follows the closed form of one body held against a source: T = T∞ + (T0 − T∞)·exp(−t/τ)", () => {
    const [celsius, toSource, toAir, capacity, air] = [350, 3, 80, 5, 20];
    const network: ThermalNetwork = {
      nodes: [{ capacity, toAir, source: { celsius, resistance: toSource }, startCelsius: air }],
      links: [],
      airCelsius: air,
    };
    const parallel = 1 / (1 / toSource + 1 / toAir);
    const end = parallel * (celsius / toSource + air / toAir);
    for (const seconds of [0.5, 2, 10, 60]) {
      const exact = end + (air - end) * Math.exp(-seconds / (parallel * capacity));
      expect(heatFor(network, seconds)[0]).toBeCloseTo(exact, 6);
    }
  });

  it("conserves heat between two bodies without air or source, and brings them together", () => {
    const cold = { capacity: 3, toAir: Number.POSITIVE_INFINITY, startCelsius: 20 };
    const network: ThermalNetwork = {
      nodes: [cold, { ...cold, capacity: 1, startCelsius: 340 }],
      links: [{ from: 0, to: 1, resistance: 4 }],
      airCelsius: 20,
    };
    const [a, b] = heatFor(network, 1);
    expect(3 * a! + b!).toBeCloseTo(3 * 20 + 340, 8);
    // Two bodies: τ = R·C1·C2/(C1 + C2) = 3 s.
    expect(b! - a!).toBeCloseTo(320 * Math.exp(-1 / 3), 6);
    expect(heatFor(network, 60)[0]).toBeCloseTo(100, 5);
  });
});

const BY_MATRIX_EXPONENTIAL = `
import json, sys
import numpy as np
from scipy.linalg import expm
n = json.loads(sys.argv[1])
size = len(n["nodes"])
A = np.zeros((size, size)); b = np.zeros(size)
for i, node in enumerate(n["nodes"]):
    if node["toAir"] is not None:
        A[i, i] -= 1 / node["toAir"]; b[i] += n["airCelsius"] / node["toAir"]
    if node.get("source"):
        A[i, i] -= 1 / node["source"]["resistance"]; b[i] += node["source"]["celsius"] / node["source"]["resistance"]
for link in n["links"]:
    f, t, g = link["from"], link["to"], 1 / link["resistance"]
    A[f, f] -= g; A[f, t] += g; A[t, t] -= g; A[t, f] += g
C = np.array([node["capacity"] for node in n["nodes"]])
A = A / C[:, None]; b = b / C
T0 = np.array([node["startCelsius"] for node in n["nodes"]])
end = np.linalg.solve(A, -b)
print(json.dumps([list(end + expm(A * t) @ (T0 - end)) for t in (0.5, 3, 8)]))
`;

describeWith("scipy", "the heat of a pot case with four ends", () => {
  it("is what SciPy's matrix exponential of the same network gives", () => {
    const network = heatedJoint("case", 4);
    const input = JSON.stringify(network, (_, value) => (value === Number.POSITIVE_INFINITY ? null : value));
    const expected: number[][] = JSON.parse(
      execFileSync("/usr/bin/python3", ["-c", BY_MATRIX_EXPONENTIAL, input], { encoding: "utf8" }),
    );
    for (const [index, seconds] of [0.5, 3, 8].entries())
      for (const [node, celsius] of heatFor(network, seconds).entries())
        expect(celsius, `node ${node} after ${seconds} s`).toBeCloseTo(expected[index]![node]!, 4);
  });
});

describe("how long a joint wants the iron", () => {
  it("spreads heat in a sheet as a cylindrical shell: ln(r2/r1)/(2πkt)", () => {
    const sheet = { thickness: 0.0005, spot: 0.005, edge: 0.012, capacity: 1, toAir: 1 };
    expect(spreadingResistance(sheet)).toBeCloseTo(Math.log(2.4) / (2 * Math.PI * 50 * 0.0005), 12);
  });

  it("is longer for a case than for a lug, and longer with every end", () => {
    const seconds = [1, 2, 3, 4].map((ends) => heatOf("case", ends, DEFAULT_IRON).seconds!);
    expect(seconds).toEqual([...seconds].sort((a, b) => a - b));
    expect(seconds[3]).toBeGreaterThan(seconds[0]!);
    expect(heatOf("lug", 4, DEFAULT_IRON).seconds).toBeLessThan(seconds[3]!);
  });

  it("has solder flowing at that time and not half a second before", () => {
    const network = heatedJoint("case", 3, DEFAULT_IRON);
    const { seconds } = heatOf("case", 3, DEFAULT_IRON);
    expect(heatFor(network, seconds! + 0.26)[1]).toBeGreaterThanOrEqual(flowCelsius(DEFAULT_IRON));
    expect(heatFor(network, seconds! - 0.5)[1]).toBeLessThan(flowCelsius(DEFAULT_IRON));
  });

  it("is never for the claw with a small iron, which a big one manages", () => {
    expect(heatOf("claw", 1, { celsius: 350, watts: 25, solder: "leaded" }).seconds).toBeNull();
    expect(heatOf("claw", 1, { celsius: 420, watts: 150, solder: "leaded" }).seconds).not.toBeNull();
  });

  it("is longer with lead-free solder, which melts higher", () => {
    const leaded = heatOf("case", 2, DEFAULT_IRON).seconds!;
    expect(heatOf("case", 2, { ...DEFAULT_IRON, solder: "lead-free" }).seconds ?? 99).toBeGreaterThan(leaded);
  });
});
