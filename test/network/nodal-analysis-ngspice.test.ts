import { expect, test } from "vitest";
import { parseLongForm } from "../../src/build-file/build-file.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";
import { circuits } from "../fixtures/circuits.ts";
import { blendedChannels, blendedHumbuckers, selectedChannels } from "../fixtures/many-parts.ts";
import { acSweep, netlistOf } from "../ngspice.ts";
import { describeWith } from "../tools.ts";

const MAX_DB = 0.001;
const MAX_DEGREES = 0.01;

/** By polynomials from one circle, from three, and frequency by frequency, as many as the guards have reactive parts. */
const cases = [
  ...circuits,
  { name: "three channels at once", build: blendedChannels(3), settings: [{ tone: 3 }, { tone: 0, volume: 7 }] },
  { name: "ten channels at once", build: blendedChannels(10), settings: [{ tone: 4, volume: 8 }, { tone: 10 }] },
  { name: "one of ten channels", build: selectedChannels(10), settings: [{ rotary: 7, tone: 2 }] },
  {
    name: "four humbuckers at once",
    build: blendedHumbuckers(4),
    settings: [{ volume: 10 }, { volume: 6, volume2: 1 }],
  },
  { name: "twenty humbuckers at once", build: blendedHumbuckers(20), settings: [{ volume: 9, volume3: 2 }] },
];

describeWith("ngspice", "curves agree with ngspice's AC analysis from 20 Hz to 20 kHz", () => {
  for (const { name, build: input, settings } of cases) {
    test.each(settings)(`${name}: %j within 0.001 dB and 0.01°`, (raw: RawSettings) => {
      const build = parseLongForm(input);
      const maker = new CircuitMaker(build);
      const set = parseSettings(new Controls(build), raw);
      const { network, outputNode } = maker.circuitIn(set);
      const reference = acSweep(
        netlistOf(
          network,
          outputNode,
          maker.sources.map((source) => source.emf),
        ),
      );
      const curve = curveOf(new ResponseEngine(build).transfersIn(set), reference.frequenciesHz);
      const wantedDb = magnitudeDb(reference);
      const wantedPhase = unwrappedPhaseDegrees(reference);
      let worstDb = 0;
      let worstDegrees = 0;
      for (let i = 0; i < wantedDb.length; i++) {
        worstDb = Math.max(worstDb, Math.abs(curve.magnitude[i]! - wantedDb[i]!));
        const turn = curve.phase[i]! - wantedPhase[i]!;
        worstDegrees = Math.max(worstDegrees, Math.abs(turn - 360 * Math.round(turn / 360)));
      }
      expect(reference.frequenciesHz.length).toBeGreaterThan(50);
      expect(worstDb).toBeLessThan(MAX_DB);
      expect(worstDegrees).toBeLessThan(MAX_DEGREES);
    });
  }
});
