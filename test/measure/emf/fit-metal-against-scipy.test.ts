import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { emfSlope, type HeardCoil } from "../../../src/measure/emf/emf-slope.ts";
import { fitMetal } from "../../../src/measure/emf/fit-metal.ts";
import { coilWithin } from "../../../src/measure/emf/known-coil.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { describeWith } from "../../tools.ts";
import { bare, exciterAt, heardFrom, product, ROD_COIL, shelf } from "../simulated-metal.ts";
import { COIL, type Complex } from "../simulated-pickup.ts";
import { hissed } from "../simulated-reading.ts";

const INPUT = { resistance: 1e6, capacitance: 150e-12 };

/** Level and moves as unknowns of their own beside the shelf's, where the code under test takes them out beforehand. */
const JOINT = `
import sys, json, numpy as np
from scipy.optimize import least_squares
job = json.load(sys.stdin)
f, y, noise, moves = (np.array(job[k]) for k in ("frequenciesHz", "nepers", "noise", "moves"))
expected = np.sqrt(noise**2 + 0.0023**2 + np.sum(moves**2, axis=0)**2)
def residual(x):
    corner, apart = np.exp(x[0]), 10**(np.exp(x[1])/40)
    law = np.log(np.abs((1 + 1j*f/(corner*apart))/(1 + 1j*f*apart/corner)))
    return y - law - x[2] - moves.T @ x[3:]
def share(e):
    rho = np.sum(e[1:]*e[:-1])/np.sum(e*e)
    return (1 - rho)/(1 + rho) if rho > 2/np.sqrt(len(e)) else 1
x, factor = np.concatenate([np.log([1000, 3]), np.zeros(1 + len(moves))]), 1
for _ in range(3):
    fit = least_squares(lambda x: np.concatenate([residual(x)/(expected*factor), x[3:]]), x, method="lm", xtol=1e-13, ftol=1e-13)
    x = fit.x
    error = np.sqrt(np.diag(np.linalg.inv(fit.jac.T @ fit.jac)))
    e = residual(x)/expected
    factor = max(1, np.sqrt(np.sum(e*e)/(len(e) - 3)))/np.sqrt(share(e))
print(json.dumps([[float(np.exp(v)), float(s)] for v, s in zip(x[:2], error)]))
`;

function heard(coil: CoilValues, law: (hz: number) => Complex, normal: () => number): HeardCoil {
  const through = heardFrom(coil, product(exciterAt(3400), law), INPUT);
  const told = { ...coil, inductance: 1.02 * coil.inductance };
  return { ...coilWithin(told, INPUT, 0.02), heard: hissed(through, normal, 1e-3) };
}

describeWith("scipy", "a shelf fitted to a slope through hiss, a coil's inductance misread", () => {
  it("is the one that SciPy finds with level and coils as unknowns beside it, with its errors", () => {
    const normal = createNormal(11);
    const slope = emfSlope(heard(COIL, shelf(1400, 2), normal), { kind: "coil", ...heard(ROD_COIL, bare, normal) });
    const { stdout, stderr } = spawnSync("/usr/bin/python3", ["-c", JOINT], {
      input: JSON.stringify(slope),
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    const joint = JSON.parse(stdout) as [number, number][];
    const { law, values } = fitMetal(slope, NO_CHECKPOINT);
    expect(law).toBe("shelf");
    for (const [i, { name, value, relativeError }] of values.entries()) {
      expect(Math.abs(value / joint[i]![0] - 1), name).toBeLessThan(1e-4);
      expect(Math.abs(relativeError / joint[i]![1] - 1), name).toBeLessThan(1e-3);
    }
  });
});
