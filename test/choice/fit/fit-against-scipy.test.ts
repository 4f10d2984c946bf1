import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { fitImpedance } from "../../../src/choice/fit/fit-impedance.ts";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import { LOADS, MEASURED_COILS, ratiosOf } from "../../measured/measured-coils.ts";
import { describeWith } from "../../tools.ts";
import { createNormal, KNOWN_COILS, namedValues, noisyImpedance } from "./known-coils.ts";

const LEAST_SQUARES = `
import sys, json, numpy as np
from scipy.optimize import least_squares
job = json.load(sys.stdin)
w = 2*np.pi*np.array(job["frequenciesHz"])
logs, phase = np.log(job["ohms"]), np.radians(job["degrees"])
def impedance(p):
    main = p["resistance"] + 0j*w
    if "loss" in p: main = main + 1/(1/(1j*w*p["inductance"]) + 1/p["loss"])
    else: main = main + 1j*w*p["inductance"]
    i = 0
    while f"loss.{i}.resistance" in p:
        main = main + 1/(1/(1j*w*p[f"loss.{i}.inductance"]) + 1/p[f"loss.{i}.resistance"])
        i += 1
    return 1/(1/main + 1j*w*p["capacitance"])
names = list(job["start"])
def errors(x):
    z = impedance(dict(zip(names, np.exp(x))))
    return np.concatenate([logs - np.log(np.abs(z)), np.angle(np.exp(1j*(phase - np.angle(z))))])
fit = least_squares(errors, np.log([job["start"][n] for n in names]), method="lm", xtol=1e-12, ftol=1e-12, gtol=1e-12)
variance = np.sum(fit.fun**2)/(len(fit.fun) - len(names))
error = np.sqrt(np.diag(np.linalg.inv(fit.jac.T @ fit.jac))*variance)
print(json.dumps({n: [float(np.exp(v)), float(e)] for n, v, e in zip(names, fit.x, error)}))
`;

const TWO_LOADS = `
import sys, json, numpy as np
from scipy.optimize import least_squares
job = json.load(sys.stdin)
names = list(job["start"])
def errors(x):
    p = dict(zip(names, np.exp(x)))
    found = []
    for sweep in job["sweeps"]:
        s = 2j*np.pi*np.array(sweep["frequenciesHz"])
        inner = s*p["inductance"] + 1/(1/(s*p["loss.0.inductance"]) + 1/p["loss.0.resistance"])
        if "loss.1.resistance" in p: inner = 1/(1/inner + 1/p["loss.1.resistance"])
        z = 1/(1/(p["resistance"] + inner) + s*p["capacitance"] + 1e-6)
        ratio = 1 + z*(sweep["siemens"] + s*sweep["farads"])
        level = np.log(10)/20*np.array(sweep["levelsDb"]) - np.log(np.abs(ratio))
        found += [level - np.mean(level), np.angle(np.exp(1j*np.radians(sweep["degrees"]))/ratio)]
    return np.concatenate(found)
fit = least_squares(errors, np.log([job["start"][n] for n in names]), method="lm", xtol=1e-12, ftol=1e-12, gtol=1e-12)
variance = np.sum(fit.fun**2)/(len(fit.fun) - len(names) - len(job["sweeps"]))
error = np.sqrt(np.diag(np.linalg.inv(fit.jac.T @ fit.jac))*variance)
runs = np.split(fit.fun, np.cumsum([n for s in job["sweeps"] for n in [len(s["degrees"])]*2])[:-1])
rho = sum(np.sum(r[1:]*r[:-1]) for r in runs)/np.sum(fit.fun**2)
error *= np.sqrt((1 + rho)/(1 - rho))
print(json.dumps({n: [float(np.exp(v)), float(e)] for n, v, e in zip(names, fit.x, error)}))
`;

describeWith("scipy", "the fit against scipy.optimize.least_squares (MINPACK)", () => {
  it.each(Object.keys(KNOWN_COILS))("gives the same values and standard errors for a %s", (name) => {
    const { coil, loss } = KNOWN_COILS[name]!;
    const table = noisyImpedance(coil, 0.005, createNormal(29));
    const fit = fitImpedance(table, { models: [loss] });
    const run = spawnSync("/usr/bin/python3", ["-c", LEAST_SQUARES], {
      input: JSON.stringify({ ...table, start: namedValues(coil) }),
      encoding: "utf8",
    });
    expect(run.stderr).toBe("");
    const wanted = JSON.parse(run.stdout) as Record<string, [number, number]>;
    for (const { name: key, value, relativeError } of fit.values) {
      const [scipyValue, scipyError] = wanted[key]!;
      // Both minimise the same sum; a hundredth of a standard error is where their stopping rules leave it.
      expect(Math.abs(Math.log(value / scipyValue)), key).toBeLessThan(0.01 * scipyError);
      expect(Math.abs(relativeError / scipyError - 1), key).toBeLessThan(0.01);
    }
  });

  it("gives the same values of a real coil by its voltage under two loads, its ranges widened for how alike the errors are", () => {
    const coil = MEASURED_COILS.find(({ name }) => name === "1a5c3e6")!;
    const sweeps = (["R", "C"] as const).map((load) => ({ ...ratiosOf(coil.name, load), load: LOADS[load] }));
    const across = { resistance: 1e6, capacitance: 0 };
    const fit = fitTwoLoads(sweeps, { across, models: ["section-and-resistor"] });
    const job = {
      sweeps: sweeps.map(({ load, ...lists }) => ({
        ...lists,
        siemens: 1 / load.resistance,
        farads: load.capacitance,
      })),
      start: namedValues(fit.coil),
    };
    const run = spawnSync("/usr/bin/python3", ["-c", TWO_LOADS], { input: JSON.stringify(job), encoding: "utf8" });
    expect(run.stderr).toBe("");
    const wanted = JSON.parse(run.stdout) as Record<string, [number, number]>;
    for (const { name, value, relativeError } of fit.values) {
      const [scipyValue, scipyError] = wanted[name]!;
      expect(Math.abs(Math.log(value / scipyValue)), name).toBeLessThan(0.01 * scipyError);
      expect(Math.abs(relativeError / scipyError - 1), name).toBeLessThan(0.01);
    }
  });
});
