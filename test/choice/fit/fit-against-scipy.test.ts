import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { fitImpedance } from "../../../src/choice/fit/fit-impedance.ts";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import { LOADS, MEASURED_COILS, ratiosOf } from "../../measured/measured-coils.ts";
import { describeWith } from "../../tools.ts";
import { createNormal, KNOWN_COILS, namedValues, noisyImpedance } from "./known-coils.ts";

/**
 * Least squares over the logarithms of a coil's values: errors in runs, each run by its group's own scatter, free multiples with or
 * without a spread of their own as further unknowns, and what coils are as a rule as further errors; two loads' lines a second time by how far their
 * neighbours were off in the first.
 */
const REFINED = `
import sys, json, numpy as np
from scipy.optimize import least_squares
job = json.load(sys.stdin)
names = list(job["start"])
def usual(p):
    rows = [np.log(p["capacitance"]/150e-12)/0.5]
    henries = sum(v for k, v in p.items() if k.endswith("inductance"))
    if "loss" in p: rows.append(np.log(p["loss"]/henries/400e3)/0.9)
    sections = []
    i = 0
    while f"loss.{i}.resistance" in p:
        r, l = p[f"loss.{i}.resistance"], p.get(f"loss.{i}.inductance")
        if l is None: rows.append(np.log(r/henries/400e3)/0.9)
        else: sections.append((l, r/(2*np.pi*l)))
        i += 1
    if len(sections) == 1:
        [(l, corner)] = sections
        rows += [np.log(l/(p["inductance"] + l)/0.22)/0.5, np.log(corner/1800)/0.7]
    elif sections:
        low, high = sorted(corner for _, corner in sections)
        rows += [np.log(l/henries/0.15)/0.55 for l, _ in sections]
        rows += [np.log(np.sqrt(low*high)/2700)/0.45, np.log(high/low/2.7)/0.5]
    return rows
def share(runs):
    square = sum(np.sum(r*r) for r in runs)
    rho = sum(np.sum(r[1:]*r[:-1]) for r in runs)/square
    return (1 - rho)/(1 + rho) if rho > 2/np.sqrt(sum(map(len, runs))) else 1
def refine(runs, scales, groups, free):
    n = len(names)
    count = sum(map(len, scales))
    freedom = count - n - len(free)
    sigma = [0.005]*len(scales)
    x = np.concatenate([np.log([job["start"][k] for k in names]), np.zeros(len(free))])
    def scaled(x):
        errors = [e.copy() for e in runs(dict(zip(names, np.exp(x[:n]))))]
        for (at, along, spread), multiple in zip(free, x[n:]): errors[at] -= multiple*along
        return [e/s for e, s in zip(errors, scales)]
    def rows(x):
        p = dict(zip(names, np.exp(x[:n])))
        spreads = [m/spread for (_, _, spread), m in zip(free, x[n:]) if spread]
        return np.concatenate([e/s for e, s in zip(scaled(x), sigma)] + [usual(p), spreads])
    for round in range(4):
        fit = least_squares(rows, x, method="lm", xtol=1e-13, ftol=1e-13, gtol=1e-13, x_scale=[1]*n + [s or 1 for _, _, s in free])
        x = fit.x
        if round == 3: break
        errors = scaled(x)
        for group in groups:
            own = [errors[k] for k in group]
            size = np.sqrt(sum(np.sum(e*e) for e in own)/(sum(map(len, own))*freedom/count)/share(own))
            for k in group: sigma[k] = size
    error = np.sqrt(np.diag(np.linalg.inv(fit.jac.T @ fit.jac)))
    return {k: [float(np.exp(v)), float(e)] for k, v, e in zip(names, x, error)}, scaled(x)
`;

const LEAST_SQUARES = `${REFINED}
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
def runs(p):
    z = impedance(p)
    return [logs - np.log(np.abs(z)), np.angle(np.exp(1j*(phase - np.angle(z))))]
even = np.ones(len(w))
print(json.dumps(refine(runs, [even, even], [[0, 1]], [])[0]))
`;

const TWO_LOADS = `${REFINED}
def runs(p):
    found = []
    for sweep in job["sweeps"]:
        s = 2j*np.pi*np.array(sweep["frequenciesHz"])
        inner = s*p["inductance"] + 1/(1/(s*p["loss.0.inductance"]) + 1/p["loss.0.resistance"])
        if "loss.1.resistance" in p: inner = 1/(1/inner + 1/p["loss.1.resistance"])
        z = 1/(1/(p["resistance"] + inner) + s*p["capacitance"] + 1e-6)
        ratio = 1 + z*(sweep["siemens"] + s*sweep["farads"])
        found.append(np.log(10)/20*np.array(sweep["levelsDb"]) - np.log(np.abs(ratio)))
        found.append(np.angle(np.exp(1j*np.radians(sweep["degrees"]))/ratio))
    return found
scales, free = [], []
for sweep in job["sweeps"]:
    level, w = np.array(sweep["levelsDb"]), 2*np.pi*np.array(sweep["frequenciesHz"])
    floor = np.minimum(2, 0.1*10**((level - level[0])/20))
    free += [(len(scales), np.ones(len(w)), None), (len(scales) + 1, w, 2e-6)]
    scales += [np.hypot(1, floor)]*2
def about(pair):
    unit = [r/np.sqrt(np.mean(r*r)) for r in pair]
    square = np.mean([r*r for r in unit], axis=0)
    local = np.sqrt([np.mean(square[max(0, i - 4):i + 5]) for i in range(len(square))])
    return np.maximum(1/3, local/np.sort(local)[len(local)//2]) if local.max() > 5*local.min() else np.ones(len(local))
groups = [[k] for k in range(len(scales))]
found, errors = refine(runs, scales, groups, free)
weights = [about(errors[k:k + 2]) for k in range(0, len(errors), 2)]
if any(np.any(w != 1) for w in weights):
    found, _ = refine(runs, [s*weights[k//2] for k, s in enumerate(scales)], groups, free)
print(json.dumps(found))
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

  it.each([
    ["592a336", "its lines alike", false],
    ["1a5c3e6", "some lines off far more than others", true],
  ])("gives the same values of a real coil, %s, by its voltage under two loads, %s", (name, _, isUneven) => {
    const coil = MEASURED_COILS.find((each) => each.name === name)!;
    const sweeps = (["R", "C"] as const).map((load) => ({ ...ratiosOf(coil.name, load), load: LOADS[load] }));
    const across = { resistance: 1e6, capacitance: 0 };
    const fit = fitTwoLoads(sweeps, { across, models: ["section-and-resistor"] });
    expect(fit.notes.join().includes("count by how far their neighbours are off")).toBe(isUneven);
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
    for (const { name: key, value, relativeError } of fit.values) {
      const [scipyValue, scipyError] = wanted[key]!;
      expect(Math.abs(Math.log(value / scipyValue)), key).toBeLessThan(0.01 * scipyError);
      expect(Math.abs(relativeError / scipyError - 1), key).toBeLessThan(0.01);
    }
  });
});
