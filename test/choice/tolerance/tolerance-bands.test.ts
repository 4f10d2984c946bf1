import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { curveFor, featuresFor, Guard } from "../../../src/choice/guard.ts";
import { drawGuards } from "../../../src/choice/tolerance/draws.ts";
import { pairSpreads } from "../../../src/choice/tolerance/pair-spreads.ts";
import { drawPatches, spreadOf } from "../../../src/choice/tolerance/spread.ts";
import { toleranceBands } from "../../../src/choice/tolerance/tolerance.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { describeWith } from "../../tools.ts";

const FREQUENCIES = Float64Array.of(100, 500, 1500, 2500, 3500, 4500, 6000, 9000);
const build = withIdealPots(
  readBuild(
    onePickup({
      pickup: {
        kind: "pickup",
        coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p", loss: "1M" } },
      },
    }),
  ),
);
const guard = new Guard(build);
const rest = guard.controls.atRest;

/** The circuit written out: EMF, R and L bridged by its loss, then everything across the coil; both dials at 10. */
const NUMPY = `
import sys, json, numpy as np
job = json.load(sys.stdin)
def curves(f, v):
    w = 2j*np.pi*f[None, :]
    col = lambda name: v[name][:, None]
    main = col("pickup.resistance") + 1/(1/(w*col("pickup.inductance")) + 1/col("pickup.loss"))
    tone = 1/(col("tone.resistance") + 1/(w*col("cap.capacitance")))
    y = w*col("pickup.capacitance") + 1/col("volume.resistance") + tone + w*5e-10 + 1e-6
    return 20*np.log10(np.abs(1/(1 + main*y)))
f = np.array(job["frequencies"])
if "drawn" in job:
    values = {name: np.array(list(column)) for name, column in job["drawn"].items()}
else:
    rng = np.random.default_rng(7)
    values = {name: nominal*(1 + tolerance*rng.uniform(-1, 1, 40000)) for name, (nominal, tolerance) in job["spread"].items()}
bands = np.quantile(curves(f, values), [0.05, 0.5, 0.95], axis=0)
few = {name: column[:3000] for name, column in values.items()}
grid = np.geomspace(2500, 9000, 1000)
level = curves(grid, few)
plateau = curves(np.array([200.0]), few)
peaks = grid[np.argmax(level, axis=1)]
last = len(grid) - 1 - np.argmax(level[:, ::-1] >= plateau - 3, axis=1)
q = lambda x: np.quantile(x, [0.05, 0.5, 0.95]).tolist()
print(json.dumps({"bands": bands.tolist(), "peak": q(peaks), "cutoff": q(grid[last])}))
`;

import { withIdealPots } from "../../ideal-pots.ts";

interface Numpy {
  readonly bands: readonly [number[], number[], number[]];
  readonly peak: readonly [number, number, number];
  readonly cutoff: readonly [number, number, number];
}

const nameOf = ({ part, field }: { part: string | null; field: string }) =>
  `${part}.${field.replace("coils.coil.", "")}`;

function numpy(job: object): Numpy {
  const run = spawnSync("/usr/bin/python3", ["-c", NUMPY], {
    input: JSON.stringify({ frequencies: [...FREQUENCIES], ...job }),
    encoding: "utf8",
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as Numpy;
}

describeWith("scipy", "tolerance bands against a Monte Carlo in NumPy", () => {
  it("of the very same draws are the same within 1e-6 dB", () => {
    const spread = spreadOf(build);
    const uniform = createUniform(9);
    const drawn: Record<string, number[]> = {};
    for (let i = 0; i < 2000; i++)
      for (const patch of drawPatches(spread, uniform)) {
        const name = nameOf(patch);
        drawn[name] ??= [];
        drawn[name].push(patch.value);
      }
    const wanted = numpy({ drawn });
    const bands = toleranceBands(guard, rest, FREQUENCIES, { draws: 2000, seed: 9 });
    for (const [level, band] of [bands.low, bands.middle, bands.high].entries())
      for (const [i, value] of band.entries()) expect(Math.abs(value - wanted.bands[level]![i]!)).toBeLessThan(1e-6);
  });

  it("of draws of its own agree within the scatter that 2,000 draws leave", () => {
    const spread = Object.fromEntries(
      spreadOf(build).map((value) => [nameOf(value), [value.nominal, value.tolerance]]),
    );
    const wanted = numpy({ spread });
    const bands = toleranceBands(guard, rest, FREQUENCIES);
    // The 5 % point of 2,000 draws scatters by about 1.4 % of the band's width; four times that is allowed.
    const near = (actual: number, expected: number, width: number) =>
      expect(Math.abs(actual - expected)).toBeLessThan(0.06 * width);
    for (let i = 0; i < FREQUENCIES.length; i++) {
      const width = wanted.bands[2][i]! - wanted.bands[0][i]!;
      for (const [level, band] of [bands.low, bands.middle, bands.high].entries())
        near(band[i]!, wanted.bands[level]![i]!, width);
    }
    const { frequency } = bands.peak!;
    for (const [found, expected] of [
      [frequency, wanted.peak],
      [bands.cutoff!, wanted.cutoff],
    ] as const) {
      const width = expected[2] - expected[0];
      for (const [i, value] of [found.low, found.middle, found.high].entries()) near(value, expected[i]!, width);
    }
  });
});

/** Every guard with all its values at one end or the other of their tolerance. */
function cornerGuards(): Guard[] {
  const spread = spreadOf(build);
  return Array.from({ length: 2 ** spread.length }, (_, corner) =>
    guard.with(
      spread.map(({ part, field, nominal, tolerance }, bit) => ({
        part,
        field,
        value: nominal * (1 + (corner & (1 << bit) ? tolerance : -tolerance)),
      })),
    ),
  );
}

describe("tolerance", () => {
  it("stays between the corner values where every part moves the curve one way", () => {
    // Below the resonance each value moves the level monotonically, so the extremes are at corners of the tolerance box.
    const low = Float64Array.of(100, 500, 1000);
    const corners = cornerGuards().map((corner) => curveFor(corner.transfers(rest), low));
    for (const drawn of drawGuards(guard, 500, 3)) {
      for (const [i, value] of curveFor(drawn.transfers(rest), low).entries()) {
        const column = corners.map((curve) => curve[i]!);
        expect(value).toBeGreaterThanOrEqual(Math.min(...column));
        expect(value).toBeLessThanOrEqual(Math.max(...column));
      }
    }
  });

  it("moves the peak within its corner values, every part pulling it one way", () => {
    const corners = cornerGuards().map((corner) => featuresFor(corner.transfers(rest)).peak!.frequency);
    for (const drawn of drawGuards(guard, 500, 3)) {
      const { frequency } = featuresFor(drawn.transfers(rest)).peak!;
      expect(frequency).toBeGreaterThanOrEqual(Math.min(...corners));
      expect(frequency).toBeLessThanOrEqual(Math.max(...corners));
    }
    const { frequency } = toleranceBands(guard, rest, FREQUENCIES).peak!;
    // Nine guards of ten lie well inside of what the worst case would be.
    expect(frequency.high - frequency.low).toBeLessThan(0.8 * (Math.max(...corners) - Math.min(...corners)));
  });

  it("is narrow where a pot was measured", () => {
    const pot = { kind: "pot", resistance: "250k", taper: "audio", measured: "243k" };
    const measured = new Guard(
      readBuild(onePickup({ parts: { volume: { ...pot, role: "volume" }, tone: { ...pot, role: "tone" } } })),
    );
    expect(spreadOf(measured.build)).toContainEqual({
      part: "volume",
      field: "measured",
      nominal: 243e3,
      tolerance: 0.01,
      isDefault: false,
    });
    const width = (of: Guard) => {
      const { high, low } = toleranceBands(of, of.controls.atRest, Float64Array.of(3800));
      return high[0]! - low[0]!;
    };
    expect(width(measured)).toBeLessThan(0.6 * width(new Guard(readBuild(onePickup()))));
  });

  it("takes a part's own tolerance before the customary one, a coil's before its pickup's", () => {
    const own = readBuild(
      onePickup({
        pickup: {
          kind: "pickup",
          tolerance: 0.03,
          coils: { coil: { resistance: "6k", inductance: "2.4H", tolerance: 0.01 } },
        },
        parts: { cap: { kind: "cap", capacitance: "22n", tolerance: 0.02 } },
      }),
    );
    const tolerances = Object.fromEntries(spreadOf(own).map((value) => [nameOf(value), value.tolerance]));
    expect(tolerances).toMatchObject({
      "pickup.inductance": 0.01,
      "cap.capacitance": 0.02,
      "volume.resistance": 0.2,
    });
  });

  it("of nothing leaves no spread, and two guards of one list are one", () => {
    const exact = Object.fromEntries(
      Object.entries(build.parts).map(([name, part]) => [name, { ...part, tolerance: 0 }]),
    ) as typeof build.parts;
    const [pair] = pairSpreads(new Guard({ ...build, parts: exact }), [rest], flatDrive(), { draws: 20 });
    expect(pair).toEqual({ median: 0, high: 0 });
  });

  it("draws the same guards from the same seed and others from another", () => {
    const first = toleranceBands(guard, rest, FREQUENCIES, { draws: 50, seed: 4 });
    expect(toleranceBands(guard, rest, FREQUENCIES, { draws: 50, seed: 4 })).toEqual(first);
    expect(toleranceBands(guard, rest, FREQUENCIES, { draws: 50, seed: 5 }).low).not.toEqual(first.low);
    expect(toleranceBands(guard, rest, FREQUENCIES, { draws: 50, seed: 0 }).low).not.toEqual(first.low);
  });
});
