import { expect, it } from "vitest";
import { expandBuild } from "../../../src/build-file/expand.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { Controls, parseSettings, type RawSettings, rawSettings } from "../../../src/build-file/settings.ts";
import { USUAL_TEMPERATURE_KELVIN } from "../../../src/listening/noise/amplifier.ts";
import { hissDensity } from "../../../src/listening/noise/hiss.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { LEVER_PLAN } from "../../fixtures/plans.ts";
import { secondReadingOfNoise } from "../../outside/second-reading.ts";
import { describeWith } from "../../tools.ts";

const rest = {
  cable: { length: "5m", capacitance: "100p", resistance: "0.2" },
  load: { resistance: "1M", capacitance: "150p", stopper: "34k" },
};
const guard = (plan: object, more: object = {}) => ({
  presolder: 1,
  plan: { ...LEVER_PLAN, ...plan },
  ...rest,
  ...more,
});
/** Every sort of circuit that a scenario has, with lossy coils, caps and metal where the catalogue has them. */
const cases: readonly { name: string; build: object; settings: RawSettings }[] = [
  { name: "one single coil", build: guard({}), settings: { lever: 3 } },
  { name: "a humbucker with its coils coupled", build: guard({}), settings: { lever: 1 } },
  { name: "two pickups in parallel", build: guard({}), settings: { lever: 4 } },
  { name: "the tone rolled to nothing", build: guard({}), settings: { lever: 5, tone1: 0 } },
  { name: "the tone half way", build: guard({}), settings: { lever: 5, tone1: 5 } },
  {
    name: "the volume turned down past a treble bleed",
    build: guard({ trebleBleed: { capacitance: "680p", parallel: "150k" } }),
    settings: { lever: 5, volume: 4 },
  },
  {
    name: "a wide single coil and a covered one, a lossy cap at the tone",
    build: guard({
      pickups: { ...LEVER_PLAN.pickups, neck: "p90", middle: "single-covered" },
    }),
    settings: { lever: 4, tone1: 3 },
  },
];

/** All caps as ceramic ones, whose loss hisses too. */
function withLossyCaps(long: BuildInput): BuildInput {
  const parts = Object.entries(long.parts).map(([name, part]) => [
    name,
    part.kind === "cap" ? { ...part, dielectric: "ceramic-z5u" } : part,
  ]);
  return { ...long, parts: Object.fromEntries(parts) };
}

describeWith("ngspice", "thermal noise at the jack, by 4kT·Re Z", () => {
  const read = cases.map(({ build, settings }) => {
    const long = withLossyCaps(expandBuild(build));
    const parsed = readBuild(long);
    const controls = new Controls(parsed);
    const state = parseSettings(controls, settings);
    return { parsed, state, sent: { build: long, settings: rawSettings(controls, state) } };
  });
  const answers = secondReadingOfNoise(read.map(({ sent }) => sent));

  it.each(cases.map(({ name }, index) => ({ name, index })))(
    "$name: within 0.001 dB of ngspice's noise analysis",
    ({ index }) => {
      const { parsed, state } = read[index]!;
      const rows = answers[index]!;
      const { circuit } = hissDensity(
        new CircuitMaker(parsed),
        state,
        Float64Array.from(rows, ([hz]) => hz),
        USUAL_TEMPERATURE_KELVIN,
        { voltage: 0, current: 0 },
      );
      expect(rows.length).toBeGreaterThan(30);
      for (const [at, [, density]] of rows.entries())
        expect(Math.abs(20 * Math.log10(Math.sqrt(circuit[at]!) / density))).toBeLessThan(0.001);
    },
  );
});
