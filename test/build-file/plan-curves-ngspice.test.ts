import { expect, test } from "vitest";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";
import { acSweeps } from "../ngspice.ts";
import { describeWith } from "../tools.ts";
import { deckOf } from "./deck.ts";

const MAX_DB = 0.001;
const MAX_DEGREES = 0.01;
/** Dials that vary from one state of the switches to the next, ends included. */
const DIALS = [
  { volume: 10, tone: 10 },
  { volume: 7, tone: 4 },
  { volume: 10, tone: 0 },
];

/** Coils of unequal strength, so that a pair out of phase leaves something to compare. */
function withUnequalCoils(build: Build): Build {
  const coils = Object.values(build.parts).flatMap((part) => (part.kind === "pickup" ? Object.values(part.coils) : []));
  for (const [index, coil] of coils.entries()) coil.output *= 1 - 0.07 * index;
  return build;
}

const deckSettings = (settings: Settings) => ({ ...settings.dials, ...settings.switches });

function worstTurn(a: Float64Array, b: Float64Array): number {
  return a.reduce((worst, value, i) => {
    const turn = value - b[i]!;
    return Math.max(worst, Math.abs(turn - 360 * Math.round(turn / 360)));
  }, 0);
}

describeWith("ngspice", "every customary plan in every position and push-pull curves as ngspice says", () => {
  test.each(PLAN_PRESETS.map((preset) => preset.id))("%s", (id) => {
    const { plan } = PLAN_PRESETS.find((preset) => preset.id === id)!;
    const build = withUnequalCoils(readBuild({ presolder: 1, plan, cable: { length: "4m", capacitance: "110p" } }));
    const controls = new Controls(build);
    const engine = new ResponseEngine(build);
    const states = expandSweep(
      controls,
      Object.fromEntries(controls.switches.map(({ name, table }) => [name, table.positions.map((_, i) => i + 1)])),
    );
    const everySetting = states.map((state, index) => {
      const { volume, tone } = DIALS[index % DIALS.length]!;
      const dials = Object.fromEntries(controls.pots.map((pot) => [pot, pot.startsWith("tone") ? tone : volume]));
      return { ...state, dials };
    });
    const references = acSweeps(
      everySetting.map((settings) => deckOf(build, deckSettings(settings))),
      8,
    );
    for (const [index, settings] of everySetting.entries()) {
      const reference = references[index]!;
      const ours = engine.transfersIn(settings).total(reference.frequenciesHz);
      const wanted = magnitudeDb(reference);
      const worstDb = magnitudeDb(ours).reduce((worst, db, i) => Math.max(worst, Math.abs(db - wanted[i]!)), 0);
      const where = JSON.stringify(settings);
      expect(Math.max(...wanted), where).toBeGreaterThan(-40);
      expect(worstDb, where).toBeLessThan(MAX_DB);
      expect(worstTurn(unwrappedPhaseDegrees(ours), unwrappedPhaseDegrees(reference)), where).toBeLessThan(MAX_DEGREES);
    }
  });
});
