import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { SILENCE_DB } from "../../src/decibels.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { onePickup } from "../fixtures/circuits.ts";

const coil = { resistance: "4.1k", inductance: "2.2H", capacitance: "90p", loss: "700k" };

/** Two like coils in series inside, their EMFs against each other. */
const opposed = { kind: "pickup", conductors: 2, coils: { one: coil, two: coil } };

describe("coils that cancel each other", () => {
  const build = readBuild(onePickup({ pickup: opposed }));
  const engine = new ResponseEngine(build);
  const settings = expandSweep(new Controls(build), { volume: [10, 5, 1], tone: [10, 5, 0] });

  test.each(settings.map((state) => [state.dials, state] as const))("are silent at %j, without a peak", (_, state) => {
    const curve = curveOf(engine.transfersIn(state), logSpaced(20, 20_000, 100));
    expect(Math.max(...curve.magnitude)).toBe(SILENCE_DB);
    expect(curve.peak).toBeNull();
    expect(curve.cutoff).toBeNull();
  });

  test("and sit behind the same metal are as silent", () => {
    const behind = { ...coil, shielding: [{ pole: 3000 }, { shelf: 1370, depth: 1.4 }] };
    const covered = readBuild(onePickup({ pickup: { ...opposed, coils: { one: behind, two: behind } } }));
    const transfers = new ResponseEngine(covered).transfersIn(new Controls(covered).atRest);
    expect(Math.max(...curveOf(transfers, logSpaced(20, 20_000, 100)).magnitude)).toBe(SILENCE_DB);
  });

  test("and differ by a millionth are heard at −120 dB", () => {
    const other = { ...coil, output: 1 + 1e-6 };
    const nearly = readBuild(onePickup({ pickup: { ...opposed, coils: { one: coil, two: other } } }));
    const transfers = new ResponseEngine(nearly).transfersIn(new Controls(nearly).atRest);
    const [level] = curveOf(transfers, Float64Array.of(1000)).magnitude;
    expect(level).toBeGreaterThan(-121);
    expect(level).toBeLessThan(-118);
  });
});
