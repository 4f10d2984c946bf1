import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { stringSetOf } from "../../src/response/coil-places.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { curveIn, settingsOf } from "./scenario-settings.ts";

const single = (more: object) => ({
  kind: "pickup",
  coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p", aperture: 0, ...more } },
});
const build = readBuild(
  threeSingles({
    parts: {
      neck: single({ distance: "0.162m" }),
      middle: single({ distance: "0.099m" }),
      bridge: single({ distance: "0.041m" }),
    },
  }),
);

describe("a curve as a string is heard", () => {
  it.each([
    [1, "bridge", 0.041],
    [3, "middle", 0.099],
    [5, "neck", 0.162],
  ] as const)("in position %i is the circuit's curve times |sin(nπx/L)| of the %s coil", (lever, _name, distance) => {
    // The open A string, 110 Hz, of 0.648 m; partial numbers from the string's own stiffness are near f/110 up here.
    const frequencies = Float64Array.of(110, 220, 330, 550);
    const settings = settingsOf(build, { lever });
    const heard = curveIn(build, settings, frequencies, { heard: { string: 5, fret: 0 } }).magnitude;
    const plain = curveIn(build, settings, frequencies).magnitude;
    for (const [index, n] of [1, 2, 3, 5].entries()) {
      // Fletcher & Rossing, The Physics of Musical Instruments, ch. 2: a pickup at x hears partial n by sin(nπx/L).
      const comb = 20 * Math.log10(Math.abs(Math.sin((n * Math.PI * distance) / 0.648)));
      // A stiff string has its partials a little higher, and so hears the coil a little farther along.
      expect(Math.abs(heard[index]! - plain[index]! - comb)).toBeLessThan(0.1);
    }
  });

  it("has a null where a node of the string lies over the coil", () => {
    const frequencies = logSpaced(300, 600, 2000);
    const { magnitude } = curveIn(build, settingsOf(build, { lever: 5 }), frequencies, {
      heard: { string: 5, fret: 0 },
    });
    const at = magnitude.indexOf(Math.min(...magnitude));
    // 0.162 m is a quarter of the scale: the fourth partial, 440 Hz, stands still there.
    expect(frequencies[at]).toBeGreaterThan(438);
    expect(frequencies[at]).toBeLessThan(443);
  });

  it("adds the coils of a pair with the sign each hears", () => {
    const frequencies = logSpaced(80, 5000, 50);
    const settings = settingsOf(build, { lever: 4 });
    const { sources, magnitude } = curveIn(build, settings, frequencies, {
      withSources: true,
      heard: { string: 6, fret: 3 },
    });
    const amplitude = (name: string, i: number) => {
      const { magnitude: level, phase } = sources!.find(({ pickup }) => pickup === name)!;
      const size = 10 ** (level[i]! / 20);
      return { re: size * Math.cos((phase[i]! * Math.PI) / 180), im: size * Math.sin((phase[i]! * Math.PI) / 180) };
    };
    for (let i = 0; i < frequencies.length; i++) {
      const neck = amplitude("neck", i);
      const middle = amplitude("middle", i);
      const sum = 20 * Math.log10(Math.hypot(neck.re + middle.re, neck.im + middle.im));
      expect(magnitude[i]).toBeCloseTo(sum, 3);
    }
  });

  it("refuses strings and frets there are not", () => {
    const ask = (string: number, fret: number) => () =>
      curveIn(build, settingsOf(build, {}), Float64Array.of(100), { heard: { string, fret } });
    expect(ask(7, 0)).toThrow(/string.*1 to 6/);
    expect(ask(1, 40)).toThrow(/fret.*36/);
  });
});

describe("the strings of a build", () => {
  const withStrings = (strings: object) => stringSetOf(readBuild(threeSingles({ rest: { strings } })));

  it("take the build's gauges and keep the usual tuning", () => {
    const gauges = ["0.23mm", "0.28mm", "0.41mm", "0.61mm", "0.81mm", "1.07mm"];
    const { strings } = withStrings({ gauges });
    expect(strings.map(({ gaugeMetres }) => gaugeMetres)).toEqual(
      [23e-5, 28e-5, 41e-5, 61e-5, 81e-5, 107e-5].map((g) => expect.closeTo(g, 8)),
    );
    expect(strings[5]!.openFrequencyHz).toBeCloseTo(82.41, 2);
  });

  it("go on downwards in fourths below the sixth", () => {
    const { strings } = withStrings({ gauges: Array(7).fill("1mm") });
    // B1 (ISO 16): 61.74 Hz.
    expect(strings[6]!.openFrequencyHz).toBeCloseTo(61.74, 1);
  });
});
