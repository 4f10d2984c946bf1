import { describe, expect, it } from "vitest";
import { clockIn } from "../../../src/measure/recording/find-clock.ts";
import { readRecording } from "../../../src/measure/recording/read-recording.ts";
import { measuringSignal, SIGNAL_KINDS, type SignalKind } from "../../../src/measure/signal/measuring-signal.ts";
import { casesOf, thoroughly } from "../../effort.ts";
import { coilLike, type Passage, recorded, resampled } from "../simulated-recording.ts";

const RATE_HZ = 48_000;
const PEAK_HZ = 4100;
const GAIN = 0.12;
const chain = coilLike(PEAK_HZ, 3);
const signals = new Map(SIGNAL_KINDS.map((kind) => [kind, measuringSignal(kind, RATE_HZ)]));
const heard = (kind: SignalKind, passage: Passage) =>
  recorded(signals.get(kind)!, RATE_HZ, { transfer: chain, gain: GAIN, ...passage });
const read = (kind: SignalKind, passage: Passage) => readRecording(kind, heard(kind, passage), RATE_HZ, "signal");

/** Decibels by which a reading is off, and by how many of its own standard errors. */
function levelErrors(
  { frequenciesHz, re, im, sd }: ReturnType<typeof read>,
  fromHz: number,
  toHz: number,
  gain = GAIN,
) {
  return Array.from(frequenciesHz, (hz, i) => {
    const expected = gain * Math.hypot(...chain(hz));
    const level = Math.hypot(re[i]!, im[i]!);
    return { hz, decibels: 20 * Math.log10(level / expected), deviations: (level - expected) / sd[i]! };
  }).filter(({ hz }) => hz >= fromHz && hz <= toHz);
}

const worst = (errors: ReturnType<typeof levelErrors>) => Math.max(...errors.map(({ decibels }) => Math.abs(decibels)));

describe.each(SIGNAL_KINDS)("a recorded %s", (kind) => {
  it("tells what it went through within 0.01 dB from 50 Hz to 12 kHz, at 24 bits and 40 ppm of drift", () => {
    const reading = read(kind, { driftPpm: 40, bits: 24, noise: 1e-6 });
    expect(reading.driftPpm).toBeCloseTo(40, 0);
    expect(reading.leftOut).toEqual([]);
    expect(worst(levelErrors(reading, 50, 12_000))).toBeLessThan(0.01);
  });

  thoroughly("tells it through hiss and hum, and by how much it may be off", () => {
    const reading = read(kind, { noise: 1e-4, hum: { hz: 50, peak: 1e-3 }, driftPpm: -25, bits: 16 });
    const errors = levelErrors(reading, 200, 8000);
    expect(worst(errors)).toBeLessThan(0.2);
    const within = errors.filter(({ deviations }) => Math.abs(deviations) < 2).length / errors.length;
    expect(within).toBeGreaterThan(0.85);
  });

  it("leaves a pass out that an input clipped", () => {
    const quiet = heard(kind, {});
    // The loudest pass alone: marks may stand above it.
    const top = quiet.slice(2 * RATE_HZ, 5.5 * RATE_HZ).reduce((most, each) => Math.max(most, Math.abs(each)), 0);
    const sound = quiet.map((each) => each / top);
    const clipped = sound.map((each) => Math.max(-0.8, Math.min(0.8, each)));
    const reading = readRecording(kind, clipped, RATE_HZ, "signal");
    expect(reading.leftOut).toEqual([{ pass: 1, damage: "clipped" }]);
    expect(worst(levelErrors(reading, 50, 12_000, GAIN / top))).toBeLessThan(0.02);
  });
});

const sound = heard("sweep", {});

it("leaves the passes of a sweep out whose peaks an input rounded", () => {
  const rounded = sound.map((each) => Math.tanh(2 * each) / 2);
  expect(readRecording("sweep", rounded, RATE_HZ, "signal").leftOut[0]).toEqual({ pass: 1, damage: "clipped" });
});

it.each(casesOf(SIGNAL_KINDS, 1))(
  "tells of a %s behind a short that hardly anything came through, and by how much it may be off",
  (kind) => {
    const faint = heard(kind, { gain: 1e-4, noise: 1e-4, hum: { hz: 50, peak: 1e-3 } });
    const clock = clockIn(heard(kind, {}), RATE_HZ, "before");
    const { re, im, sd } = readRecording(kind, faint, RATE_HZ, "behind", clock);
    const within = re.filter((each, i) => Math.hypot(each, im[i]!) < 1e-3 + 4 * sd[i]!).length;
    expect(within / re.length).toBeGreaterThan(0.95);
  },
);

it.each(casesOf([50, 100, 150, 250], 1))(
  "counts %d Hz of hum among what a sweep behind a short may be off by",
  (hz) => {
    const faint = heard("sweep", { gain: 1e-7, noise: 1e-5, hum: { hz, peak: 1e-3 } });
    const { frequenciesHz, re, im, sd } = readRecording(
      "sweep",
      faint,
      RATE_HZ,
      "behind",
      clockIn(sound, RATE_HZ, "before"),
    );
    const near = [...frequenciesHz.keys()].filter((i) => Math.abs(frequenciesHz[i]! / hz - 1) < 0.05);
    expect(near.length).toBeGreaterThan(1);
    for (const i of near) expect(Math.hypot(re[i]!, im[i]!), `${frequenciesHz[i]} Hz`).toBeLessThan(2.5 * sd[i]!);
  },
);

it.each(casesOf([2, 3, 4], 1))(
  "does not take hum and hiss over what a volume at 0 leaves for a gain that moves by itself (seed %d)",
  (seed) => {
    // 10 Ω behind 47 kΩ, as a wiper at its end.
    const faint = heard("sweep", {
      transfer: () => [1, 0],
      gain: 2e-4,
      noise: 3.2e-5,
      hum: { hz: 50, peak: 5e-4, phase: seed },
      seed,
    });
    const { re, im } = readRecording("sweep", faint, RATE_HZ, "behind", clockIn(sound, RATE_HZ, "before"));
    const levels = Array.from(re, (each, i) => Math.hypot(each, im[i]!)).sort((a, b) => a - b);
    expect(20 * Math.log10(levels[Math.floor(levels.length / 2)]! / 2e-4)).toBeCloseTo(0, 0);
  },
);

describe("a recording that cannot be measured by", () => {
  const refusal = (samples: Float32Array) => () => readRecording("sweep", samples, RATE_HZ, "signal");
  const music = sound.map((_, n) => 0.2 * Math.sin(n * 0.05) * Math.sin(n * 0.00031) + 0.1 * Math.sin(n * 0.131));
  const holes = (at: readonly number[]) => {
    const kept = sound.filter((_, n) => !at.some((second) => n > second * RATE_HZ && n < (second + 0.02) * RATE_HZ));
    return Float32Array.from(kept);
  };

  it.each([
    ["is silent", sound.map(() => 0)],
    ["does not hold the measuring signal", music],
    ["ends before the signal does", sound.slice(0, 9 * RATE_HZ)],
    ["changes its gain by itself", sound.map((each, n) => each * (n > 6 * RATE_HZ ? 1.5 : 1))],
    ["has lost samples in more than one place", holes([3, 8, 13])],
    ["runs at another rate than it says", resampled(sound, RATE_HZ, (48 / 44.1 - 1) * 1e6, 0)],
    ["is clipped in all three passes", sound.map((each) => Math.max(-0.11, Math.min(0.11, 2 * each)))],
  ] as const)("%s, and is told what to do", (why, samples) => {
    expect(refusal(samples)).toThrow(new RegExp(`^signal: the recording ${why}.*\\. \\w`));
  });

  it.each(casesOf(SIGNAL_KINDS, 1))("is not the one that is said, but a %s: it is named", (kind) => {
    const said = kind === "sweep" ? "multitone" : "sweep";
    const samples = heard(kind, { noise: 1e-4, hum: { hz: 50, peak: 1e-2 }, driftPpm: 40 });
    expect(() => readRecording(said, samples, RATE_HZ, "signal")).toThrow(
      `signal: the recording holds the other of the two measuring signals. Say which of them was played (a ${kind}, not a ${said})`,
    );
  });

  it("leaves a pass out whose dropout a program filled with one value", () => {
    const filled = sound.map((each, n) => (n > 3 * RATE_HZ && n < 3.004 * RATE_HZ ? 0.01 : each));
    expect(readRecording("sweep", filled, RATE_HZ, "signal").leftOut).toEqual([{ pass: 1, damage: "stuck" }]);
  });

  thoroughly("needs only two whole passes: one that lost samples is left out", () => {
    const reading = readRecording("sweep", holes([3]), RATE_HZ, "signal");
    expect(reading.leftOut).toEqual([{ pass: 1, damage: "lost" }]);
    expect(worst(levelErrors(reading, 50, 12_000))).toBeLessThan(0.02);
  });
});
