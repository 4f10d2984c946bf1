import { spawnSync } from "node:child_process";
import { describe, expect, test } from "vitest";
import type { CoilPlace } from "../../src/strings/comb.ts";
import type { Note } from "../../src/strings/score.ts";
import { inharmonicity, usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { casesOf } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { cents, decibels, measurePartial } from "./spectrum.ts";

const RATE = 48_000;
const SET = usualStringSet();
const PLUCK_SECONDS = 0.02;

interface Case {
  readonly string: number;
  readonly fret: number;
  readonly pluckMetres: number;
  readonly pluckWidthMetres: number;
  readonly distanceMetres: number;
  readonly apertureMetres: number;
}

/** Places chosen so that none of the first twenty partials is at a null of either comb. */
const CASES: Case[] = [
  { string: 6, fret: 0, pluckMetres: 0.1183, pluckWidthMetres: 0.003, distanceMetres: 0.099, apertureMetres: 0.012 },
  { string: 5, fret: 3, pluckMetres: 0.0727, pluckWidthMetres: 0.018, distanceMetres: 0.1587, apertureMetres: 0.02 },
  { string: 3, fret: 0, pluckMetres: 0.1371, pluckWidthMetres: 0.003, distanceMetres: 0.041, apertureMetres: 0 },
  { string: 1, fret: 12, pluckMetres: 0.0613, pluckWidthMetres: 0.012, distanceMetres: 0.0431, apertureMetres: 0.009 },
];

function play(place: Case): Float32Array {
  const { distanceMetres, apertureMetres, ...hand } = place;
  // Straight towards the coil and without a scrape: one plane, and the pluck alone.
  const still = { slantDegrees: 0, scrape: 0 };
  const note: Note = { timeSeconds: PLUCK_SECONDS, velocity: 1, durationSeconds: 2, ...still, ...hand };
  const coil: CoilPlace = { distanceMetres, apertureMetres, sign: 1, output: 1 };
  return renderPhrase({ name: "note", description: "", seconds: 1, notes: [note] }, [coil], SET, RATE)[0]!;
}

/** Pitch, stiffness and length written out here again, from the formulae in the test titles. */
function stopped({ string, fret }: Case) {
  const spec = SET.strings[string - 1]!;
  const fundamentalHz = spec.openFrequencyHz * 2 ** (fret / 12);
  const length = 0.648 * 2 ** (-fret / 12);
  const stiffness = inharmonicity(spec, 0.648) * (0.648 / length) ** 2;
  return { fundamentalHz, length, frequencyOf: (n: number) => n * fundamentalHz * Math.sqrt(1 + stiffness * n * n) };
}

function textbookAmplitude(place: Case, n: number): number {
  const { length, frequencyOf } = stopped(place);
  const k = (n * Math.PI) / length;
  const average = (width: number) => (width === 0 ? 1 : Math.sin((k * width) / 2) / ((k * width) / 2));
  const pluck = (Math.sin(k * place.pluckMetres) * average(place.pluckWidthMetres)) / n ** 2;
  return pluck * frequencyOf(n) * Math.sin(k * place.distanceMetres) * average(place.apertureMetres);
}

function measure(samples: Float32Array, place: Case, n: number) {
  const { fundamentalHz, frequencyOf } = stopped(place);
  const where = { pluckSeconds: PLUCK_SECONDS, fundamentalHz, nearHz: frequencyOf(n), reachHz: fundamentalHz / 3 };
  return measurePartial(samples, RATE, where);
}

const partials = Array.from({ length: 20 }, (_, index) => index + 1);

describe.each(CASES)("string $string at fret $fret, plucked at $pluckMetres m, coil at $distanceMetres m", (place) => {
  const samples = play(place);
  const measured = partials.map((n) => measure(samples, place, n));

  test("has partials 1–20 in the textbook's amplitudes, pluck comb × pickup comb (Fletcher & Rossing, ch. 2), within 0.2 dB", () => {
    for (const n of partials) {
      const got = decibels(measured[n - 1]!.amplitude / measured[0]!.amplitude);
      const expected = decibels(textbookAmplitude(place, n) / textbookAmplitude(place, 1));
      expect(Math.abs(got - expected), `partial ${n}: ${got} dB, textbook ${expected} dB`).toBeLessThan(0.2);
    }
  });

  test("has them at n·f0·√(1 + B·n²) within 1 cent", () => {
    for (const n of partials) {
      const off = cents(measured[n - 1]!.frequencyHz, stopped(place).frequencyOf(n));
      expect(Math.abs(off), `partial ${n} is off by ${off} cents`).toBeLessThan(1);
    }
  });

  test("loses its high partials sooner than its low ones", () => {
    expect(measured[19]!.decayPerSecond).toBeGreaterThan(2 * measured[0]!.decayPerSecond);
    expect(measured[0]!.decayPerSecond).toBeGreaterThan(0);
  });
});

describe("nulls", () => {
  const base = CASES[0]!;

  test.each(casesOf([3, 5, 6], 1))(
    "of the coil fall on every partial divisible by %d where sin(nπx/L) = 0, 80 dB under the fundamental",
    (order) => {
      const place = { ...base, distanceMetres: 0.648 / order, apertureMetres: 0 };
      const samples = play(place);
      const fundamental = measure(samples, place, 1).amplitude;
      for (const n of partials) {
        // A narrow reach: at a null there is no peak to find, only the floor between the neighbours.
        const { fundamentalHz, frequencyOf } = stopped(place);
        const where = { pluckSeconds: PLUCK_SECONDS, fundamentalHz, nearHz: frequencyOf(n), reachHz: 0.5 };
        const level = decibels(measurePartial(samples, RATE, where).amplitude / fundamental);
        if (n % order === 0) expect(level, `partial ${n}`).toBeLessThan(-80);
        else expect(level, `partial ${n}`).toBeGreaterThan(-60);
      }
    },
  );

  test("move with the fret: a coil at a quarter of the open string is in the middle at fret twelve", () => {
    const place = { ...base, fret: 12, distanceMetres: 0.162, apertureMetres: 0, pluckMetres: 0.07 };
    const samples = play(place);
    expect(decibels(measure(samples, place, 2).amplitude / measure(samples, place, 1).amplitude)).toBeLessThan(-80);
    expect(decibels(measure(samples, place, 3).amplitude / measure(samples, place, 1).amplitude)).toBeGreaterThan(-30);
  });
});

/**
 * Nothing of the combs is in here: SciPy bends a string under a force spread over the plectrum's width, takes its modes by a
 * discrete sine transform, averages each numerically over the aperture, and compares with a chirp-z spectrum of the sound.
 */
const SCIPY = `
import sys, json, numpy as np
from scipy import fft, signal, integrate
q = json.loads(sys.argv[1])
x = np.frombuffer(sys.stdin.buffer.read(), dtype="<f4").astype(float)
L, p, w, c, a, f0, B, rate = (q[k] for k in ("length", "pluck", "width", "coil", "aperture", "f0", "B", "rate"))
M = 16384
z = np.arange(1, M) * L / M
shape = np.mean([np.where(z < s, z * (L - s), s * (L - z)) for s in p + w * ((np.arange(64) + .5) / 64 - .5)], axis=0)
modes = fft.dst(shape, type=1)
n = np.arange(1, 21)
f = n * f0 * np.sqrt(1 + B * n**2)
heard = [integrate.quad(lambda s: np.sin(k * np.pi * s / L), c - a/2, c + a/2)[0] / a for k in n]
expected = np.abs(modes[:20] * f * heard)
size = int(24 * rate / f0); start = int((q["at"] + 0.01) * rate)
win = signal.windows.blackmanharris(size)
t = np.arange(size) / rate
errors, offs = [], []
amps = []
for i in range(20):
    span = f0 / 4; m = 4001
    grid = f[i] - span + 2 * span * np.arange(m) / (m - 1)
    def spectrum(offset):
        return np.abs(signal.czt(x[start+offset:start+offset+size] * win, m, np.exp(-2j*np.pi*(grid[1]-grid[0])/rate), np.exp(2j*np.pi*grid[0]/rate)))
    s0, s1 = spectrum(0), spectrum(size // 2)
    k = int(np.argmax(s0))
    d = np.log(s0[k] / s1[k]) * rate / (size // 2)
    amps.append(s0[k] / np.sum(win * np.exp(-d * (t + start / rate - q["at"]))))
    offs.append(1200 * np.log2(grid[k] / f[i]))
amps = np.array(amps)
errors = 20 * np.log10(amps / amps[0] / (expected / expected[0]))
print(json.dumps({"errors": errors.tolist(), "cents": offs}))
`;

describeWith("scipy", "a string bent and projected on its modes by SciPy", () => {
  test.each(casesOf([CASES[0]!, CASES[1]!], 1))(
    "has the spectrum of the rendered note on string $string within 0.2 dB and 1 cent",
    (place) => {
      const { fundamentalHz, length } = stopped(place);
      const request = {
        length,
        pluck: place.pluckMetres,
        width: place.pluckWidthMetres,
        coil: place.distanceMetres,
        aperture: place.apertureMetres,
        f0: fundamentalHz,
        B: inharmonicity(SET.strings[place.string - 1]!, 0.648) * 2 ** (place.fret / 6),
        rate: RATE,
        at: PLUCK_SECONDS,
      };
      const input = Buffer.from(play(place).buffer);
      const run = spawnSync("/usr/bin/python3", ["-c", SCIPY, JSON.stringify(request)], { input, encoding: "utf8" });
      expect(run.stderr).toBe("");
      const { errors, cents: offs } = JSON.parse(run.stdout) as { errors: number[]; cents: number[] };
      expect(errors).toHaveLength(20);
      expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.2);
      expect(Math.max(...offs.map(Math.abs))).toBeLessThan(1);
    },
  );
});
