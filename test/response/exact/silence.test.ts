import { describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { SILENCE_DB } from "../../../src/decibels.ts";
import { CurveReader } from "../../../src/response/curve-reader.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";
import { backwardVolumes, cancellingCoils } from "../../fixtures/silent-guards.ts";

const frequenciesHz = logSpaced(20, 96_000, 200);
describe("silence is one thing, however it is asked about", () => {
  test.each([
    ["coils that are shorted", backwardVolumes(), { neckVolume: 0, bridgeVolume: 0 }],
    ["coils that cancel", cancellingCoils(), { volume: 7, tone: 3 }],
  ])("%s", (_, input, raw) => {
    const build = readBuild(input);
    const controls = new Controls(build);
    const state = parseSettings(controls, raw);
    const others = Object.keys(raw).flatMap((name) =>
      [2, 10].map((dial) => parseSettings(controls, { ...raw, [name]: dial })),
    );
    const asked = (engine: ResponseEngine, settings = [state]) =>
      new CurveReader(build, engine).curvesOf({ settings, frequenciesHz, withSources: false }, NO_CHECKPOINT).at(-1)!;
    const kept = new ResponseEngine(build, { isKept: true });
    for (const curve of [
      asked(new ResponseEngine(build)),
      asked(kept),
      asked(kept),
      asked(new ResponseEngine(build), [...others, state]),
    ]) {
      expect(new Set(curve.magnitude)).toEqual(new Set([SILENCE_DB]));
      expect(new Set(curve.phase)).toEqual(new Set([0]));
      expect([curve.peak, curve.cutoff]).toEqual([null, null]);
    }
  });
});
