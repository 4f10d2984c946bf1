import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb } from "../../src/response/level-and-phase.ts";
import { LOADS, type LoadName, MEASURED_COILS, type MeasuredCoil, ratiosOf } from "../measured/measured-coils.ts";

/** What instrument and coil have across them is in `siemens`; an absent one still needs a number. */
const OPEN_OHMS = 1e11;

function levels({ section, siemens, ...coil }: MeasuredCoil, load: LoadName | undefined, frequenciesHz: Float64Array) {
  const { resistance, capacitance, inductance } = coil;
  const { resistance: ohms, capacitance: farads } = load ? LOADS[load] : { resistance: Infinity, capacitance: 0 };
  const spec = { resistance, capacitance, inductance, ...(section ? { loss: [section] } : {}) };
  const build = readBuild({
    presolder: 1,
    parts: { pickup: { kind: "pickup", coils: { coil: spec } }, jack: { kind: "jack" } },
    wires: [
      ["pickup.hot", "jack.tip"],
      ["pickup.ground", "jack.sleeve"],
    ],
    load: { resistance: Math.min(OPEN_OHMS, 1 / (siemens + 1 / ohms)), capacitance: farads },
  });
  return magnitudeDb(new ResponseEngine(build).transfersIn(new Controls(build).atRest).total(frequenciesHz));
}

/** Root mean square of measured minus computed, its mean out: nobody knows whether the gain was touched. */
function rmsDb(coil: MeasuredCoil, load: LoadName): number {
  const { frequenciesHz, levelsDb } = ratiosOf(coil.name, load);
  const at = Float64Array.from(frequenciesHz);
  const [free, loaded] = [levels(coil, undefined, at), levels(coil, load, at)];
  const errors = levelsDb.map((level, i) => level - (free[i]! - loaded[i]!));
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  return Math.sqrt(errors.reduce((sum, error) => sum + (error - mean) ** 2, 0) / errors.length);
}

/** Where the circuit follows the whole sweep within this, so it does here; coils that no such circuit follows better are held to theirs. */
const CLOSE_DB = 0.25;

describe("the circuit with a real coil's values gives its voltage unloaded over loaded, level free", () => {
  test.each(MEASURED_COILS.map((coil) => [coil.kind, coil.name, coil] as const))("%s (%s)", (_kind, _name, coil) => {
    for (const load of ["R", "C"] as const) {
      expect(rmsDb(coil, load), load).toBeLessThan(Math.max(CLOSE_DB, 1.1 * coil.rmsDb[load]));
    }
  });

  test("within 0.25 dB under both loads for twelve of fifteen", () => {
    const close = MEASURED_COILS.filter((coil) => rmsDb(coil, "R") < CLOSE_DB && rmsDb(coil, "C") < CLOSE_DB);
    expect(close).toHaveLength(12);
  });
});
