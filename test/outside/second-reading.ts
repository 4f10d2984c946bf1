import { execFileSync } from "node:child_process";
import { expect } from "vitest";
import type { Settings } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import type { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";

type Row = [frequencyHz: number, re: number, im: number];

/** What ngspice says of guards in settings, by a reading of the long form of its own; null where tip and sleeve are one net. */
export function secondReading(cases: object[]): (Row[] | null)[] {
  const output = execFileSync("/usr/bin/python3", ["test/outside/long_form_to_ngspice.py"], {
    input: JSON.stringify(cases),
    maxBuffer: 64 * 2 ** 20,
  });
  return JSON.parse(output.toString());
}

/** As `secondReading`, of the thermal noise at the jack, V/√Hz, at 20 °C. */
export function secondReadingOfNoise(cases: object[]): ([frequencyHz: number, density: number][] | null)[] {
  const output = execFileSync("/usr/bin/python3", ["test/outside/long_form_to_ngspice.py", "noise"], {
    input: JSON.stringify(cases),
    maxBuffer: 64 * 2 ** 20,
  });
  return JSON.parse(output.toString());
}

/** Holds an engine's curve to ngspice's: 0.001 dB and 0.01°. */
export function expectCurveOf(engine: ResponseEngine, state: Settings, rows: Row[]): void {
  const column = (i: 0 | 1 | 2) => Float64Array.from(rows, (row) => row[i]);
  const reference = { re: column(1), im: column(2) };
  const curve = curveOf(engine.transfersIn(state), column(0));
  const level = magnitudeDb(reference);
  const phase = unwrappedPhaseDegrees(reference);
  for (const [i, expected] of level.entries()) {
    // Below −150 dB ngspice itself leaves only rounding.
    if (expected < -150) continue;
    expect(Math.abs(curve.magnitude[i]! - expected)).toBeLessThan(0.001);
    const turn = curve.phase[i]! - phase[i]!;
    expect(Math.abs(turn - 360 * Math.round(turn / 360))).toBeLessThan(0.01);
  }
}
