import { describe, expect, test } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { curveOf } from "../../src/response/curve.ts";
import { solvedTransfers } from "../../src/response/transfers.ts";
import { acSweeps, netlistOf } from "../ngspice.ts";
import { Random } from "../random.ts";
import { anySettings } from "../response/exact/any-guard.ts";
import { plausibleGuard } from "../response/exact/plausible-guard.ts";
import { describeWith } from "../tools.ts";
import { measuredTransfer } from "./spectra.ts";

/** As far as filters are exact: 0.94 of the Nyquist frequency. */
const RATES: [rateHz: number, topHz: number][] = [
  [96_000, 45_000],
  [192_000, 90_000],
];
/** Promised, and met to a twentieth by most. */
const MOST_DB = 0.05;
/** A single-precision sound holds no more beside its loudest band. */
const DEPTH_DB = 80;

const guards = Array.from({ length: 60 }, (_, seed) => plausibleGuard(seed));

function statesOf(input: object, seed: number) {
  const build = readBuild(input);
  const controls = new Controls(build);
  return { build, states: anySettings(new Random(seed ^ 0x5eed), input, 2).map((raw) => parseSettings(controls, raw)) };
}

function click(rateHz: number): Float32Array {
  const samples = new Float32Array(rateHz / 10);
  samples[0] = 1;
  return samples;
}

/** Largest difference in dB where a sound has the depth for it. */
function worstOf(measured: Float64Array, curve: Float64Array): number {
  const loudest = Math.max(...curve);
  // Under silence there is nothing to measure.
  if (loudest < -190) return 0;
  return measured.reduce(
    (worst, level, i) =>
      curve[i]! > Math.max(loudest - DEPTH_DB, -195) ? Math.max(worst, Math.abs(level - curve[i]!)) : worst,
    0,
  );
}

describe.each(RATES)(
  "rendered at %i Hz, plausible guards are the plain solution's curve up to %i Hz",
  (rateHz, topHz) => {
    const input = click(rateHz);
    const signal = { file: encodeWav({ sampleRateHz: rateHz, channels: [input] }, "float32") };

    test.each(guards.map((guard, seed) => [seed, guard] as const))("guard %i", (seed, guard) => {
      const { build, states } = statesOf(guard, seed);
      const renderer = createRenderer({ build, signal }, states, NO_CHECKPOINT);
      const maker = new CircuitMaker(build);
      for (const state of states) {
        const output = renderer.render(state).channels[0]!;
        const measured = measuredTransfer(input, output, rateHz, renderer.delaySamples, 20, topHz);
        const solved = solvedTransfers(maker.circuitIn(state), maker.sources);
        const { magnitude } = curveOf(solved, measured.frequenciesHz);
        expect(worstOf(measured.magnitude, magnitude)).toBeLessThan(MOST_DB);
      }
    });
  },
);

describeWith(
  "ngspice",
  "rendered at 192 kHz and read off at single frequencies, guards are ngspice's up to 90 kHz",
  () => {
    const rateHz = 192_000;
    const metalFree = guards.flatMap((guard, seed) => (JSON.stringify(guard).includes("shielding") ? [] : [seed]));
    const cases = metalFree.slice(0, 12).map((seed) => {
      const { build, states } = statesOf(guards[seed]!, seed);
      const maker = new CircuitMaker(build);
      const { network, outputNode } = maker.circuitIn(states[0]!);
      const emfs = maker.sources.map(({ emf }) => emf);
      return { seed, build, state: states[0]!, netlist: netlistOf(network, outputNode, emfs) };
    });
    const reference = acSweeps(
      cases.map(({ netlist }) => netlist),
      20,
      90_000,
    );

    test.each(cases.map((each, index) => [each.seed, each, index] as const))(
      "guard %i",
      (_, { build, state }, index) => {
        const input = click(rateHz);
        const signal = { file: encodeWav({ sampleRateHz: rateHz, channels: [input] }, "float32") };
        const renderer = createRenderer({ build, signal }, [state], NO_CHECKPOINT);
        const output = renderer.render(state).channels[0]!;
        const { frequenciesHz, re, im } = reference[index]!;
        const theirs = re.map((value, i) => 20 * Math.log10(Math.hypot(value, im[i]!)));
        // The sum of a click's samples turned by a frequency is its transfer there.
        const ours = frequenciesHz.map((hertz) => {
          let [cosine, sine] = [0, 0];
          for (const [n, sample] of output.entries()) {
            const angle = (2 * Math.PI * hertz * n) / rateHz;
            cosine += sample * Math.cos(angle);
            sine += sample * Math.sin(angle);
          }
          return 20 * Math.log10(Math.hypot(cosine, sine));
        });
        expect(worstOf(ours, theirs)).toBeLessThan(MOST_DB);
      },
    );
  },
);
