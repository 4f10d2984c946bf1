import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { parseSettings } from "../../src/build-file/settings.ts";
import { wiperFraction } from "../../src/build-file/taper.ts";
import { curveFor, Guard } from "../../src/choice/guard.ts";
import { logSpaced } from "../../src/response/frequencies.ts";

const FREQUENCIES = logSpaced(20, 20_000, 60);
const rootMeanSquare = (squares: readonly number[]) =>
  Math.sqrt(squares.reduce((total, each) => total + each, 0) / squares.length);
const usual = (dial: number) => wiperFraction({ taper: "audio", midpoint: undefined }, dial);

/**
 * A network of resistors, caps and a pot measured at 21 rotations, 20 Hz to 20 kHz (B. Holmes, M. van Walstijn, DAFx-19, Birmingham
 * 2019, companion data, repository bholmesqub/DAFx19). Percent of the track from end to wiper, every 15° of 300°, of the audio and
 * the linear pot in it, and how far plain nodal analysis with them stays from all measured curves, six values being fitted.
 */
const TRACKS = {
  audio: {
    total: 98.14e3,
    percent: [
      0.001, 0.238, 1.013, 1.718, 2.44, 5.226, 7.827, 9.971, 11.888, 14.387, 16.813, 19.154, 21.276, 34.492, 48.074,
      63.267, 79.845, 93.937, 99.654, 100.061, 100.061,
    ],
    fittedWithinDb: 0.32,
  },
  linear: {
    total: 95.04e3,
    percent: [
      0.001, 0.001, 4.898, 10.418, 15.896, 22.054, 27.02, 33.081, 38.657, 43.897, 49.6, 55.051, 60.659, 66.004, 71.223,
      77.189, 82.955, 88.931, 94.771, 99.874, 99.895,
    ],
    fittedWithinDb: 0.34,
  },
} satisfies Record<string, Track>;
interface Track {
  /** Ω. */
  readonly total: number;
  readonly percent: readonly number[];
  /** How far plain nodal analysis with this track stays from the measured curves, dB rms. */
  readonly fittedWithinDb: number;
}
/** The least and the most that was fitted to any of the 42 curves. */
const FITTED = { R1: [43e3, 49e3], C1: [8.3e-9, 9e-9], R2: [21e3, 21.5e3], C2: [4.7e-9, 4.9e-9] } as const;
const LOAD = 100e3;
const corners = Array.from({ length: 16 }, (_, corner) => ({
  R1: FITTED.R1[corner & 1]!,
  C1: FITTED.C1[(corner >> 1) & 1]!,
  R2: FITTED.R2[(corner >> 2) & 1]!,
  C2: FITTED.C2[(corner >> 3) & 1]!,
}));
type Values = (typeof corners)[number];

/** The network as somebody would write it for the service, with the track's own table; the coil is next to nothing. */
function asBuild({ R1, C1, R2, C2 }: Values, { total, percent }: Track) {
  const taper = percent.map((share, i) => [i / 20, Math.min(1, share / 100)]);
  return readBuild({
    presolder: 1,
    parts: {
      source: { kind: "pickup", coils: { coil: { resistance: 0.01, inductance: 1e-9 } } },
      r1: { kind: "resistor", resistance: R1 },
      c1: { kind: "cap", capacitance: C1 },
      r2: { kind: "resistor", resistance: R2 },
      c2: { kind: "cap", capacitance: C2 },
      blend: { kind: "pot", role: "blend", resistance: total, taper },
      jack: { kind: "jack" },
    },
    wires: [
      ["source.ground", "jack.sleeve"],
      ["source.hot", "r1.a"],
      ["r1.b", "blend.1"],
      ["c1.a", "blend.1"],
      ["c1.b", "jack.sleeve"],
      ["source.hot", "c2.a"],
      ["c2.b", "blend.3"],
      ["r2.a", "blend.3"],
      ["r2.b", "jack.sleeve"],
      ["blend.2", "jack.tip"],
    ],
    cable: { length: "1m", capacitance: "0pF/m" },
    load: { resistance: LOAD },
  });
}

/** Level at the wiper by the two dividers' Thévenin sources, dB re the source: a calculation with nothing of the project's in it. */
function byHand({ R1, C1, R2, C2 }: Values, { total, percent }: Track, rotation: number, hz: number): number {
  const [one, w] = [{ re: 1, im: 0 }, 2 * Math.PI * hz];
  type Complex = typeof one;
  const sum = (a: Complex, b: Complex) => ({ re: a.re + b.re, im: a.im + b.im });
  const product = (a: Complex, b: Complex) => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
  const inverse = ({ re, im }: Complex) => ({ re: re / (re * re + im * im), im: -im / (re * re + im * im) });
  const low = inverse({ re: 1, im: w * R1 * C1 });
  const rest = inverse({ re: 1, im: w * R2 * C2 });
  const high = product({ re: 0, im: w * R2 * C2 }, rest);
  const share = percent[rotation]! / 100;
  const below = inverse(sum(product(low, { re: R1, im: 0 }), { re: Math.max(1, share * total), im: 0 }));
  const above = inverse(sum(product(rest, { re: R2, im: 0 }), { re: Math.max(1, (1 - share) * total), im: 0 }));
  const flowing = sum(product(low, below), product(high, above));
  const { re, im } = product(flowing, inverse(sum(sum(below, above), { re: 1 / LOAD, im: 0 })));
  return 20 * Math.log10(Math.hypot(re, im));
}

/** Root mean square over 21 rotations and the band, dB, of the service's curves less those by hand. */
function fromPlainSolution(values: Values, track: Track): number {
  const guard = new Guard(asBuild(values, track));
  const squares = track.percent.flatMap((_, rotation) => {
    const transfers = guard.transfers(parseSettings(guard.controls, { blend: rotation / 2 }));
    return Array.from(curveFor(transfers, FREQUENCIES), (level, i) => {
      return (level - byHand(values, track, rotation, FREQUENCIES[i]!)) ** 2;
    });
  });
  return rootMeanSquare(squares);
}

describe("the same network as a guard with the pot's own table", () => {
  // By Minkowski's inequality no further from the measured curves than the sum of the two distances.
  test.each(["audio", "linear"] as const)("stays within 0.4 dB rms of the 21 measured curves, %s", (name) => {
    const track = TRACKS[name];
    for (const values of corners) expect(fromPlainSolution(values, track) + track.fittedWithinDb).toBeLessThan(0.4);
  });

  test("would not by the usual track, so the bound can fail", () => {
    const { total, fittedWithinDb } = TRACKS.audio;
    const track = { total, fittedWithinDb, percent: TRACKS.audio.percent.map((_, i) => 100 * usual(i / 2)) };
    const values = corners[0]!;
    const squares = TRACKS.audio.percent.flatMap((_, rotation) =>
      Array.from(
        FREQUENCIES,
        (hz) => (byHand(values, track, rotation, hz) - byHand(values, TRACKS.audio, rotation, hz)) ** 2,
      ),
    );
    expect(rootMeanSquare(squares)).toBeGreaterThan(0.4);
  });
});
