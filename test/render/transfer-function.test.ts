import { describe, expect, it } from "vitest";
import { testSignal } from "../../src/audio/signals.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import type { SignalSource } from "../../src/render/feed.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { curveIn, SCENARIOS, type ScenarioCase, WORK } from "./scenario-settings.ts";
import { largestDifference, measuredTransfer } from "./spectra.ts";

/** Promised: a rendered sound is the curve made audible, within 0.05 dB from 20 Hz to 18 kHz. */
const TOLERANCE_DB = 0.05;
/** A 20th of that tolerance as an angle (0.05 dB is 0.33°) would be too strict for nulls; one degree is not heard. */
const TOLERANCE_DEGREES = 1;

/** Two equal coils out of phase leave nothing but rounding, in the curve as in the sound. */
const ROUNDING_DB = -200;

type ShortSignal = "click" | "sweep" | "noise";

/** A tenth of a second around a click, half a second of noise or of rising sine: the built-in signals would take minutes. */
function shortSignal(kind: ShortSignal, rate: number): Float32Array {
  if (kind === "click") return testSignal("click", rate).channels[0]!.slice(0, rate / 10);
  if (kind === "noise") return testSignal("noise", rate).channels[0]!.slice(0, rate / 2);
  const octaves = Math.log((0.48 * rate) / 10);
  const length = rate / 2;
  return Float32Array.from({ length }, (_, n) => {
    const fade = Math.min(1, n / 500, (length - 1 - n) / 50);
    return 0.5 * fade * Math.sin(((2 * Math.PI * 10 * 0.5) / octaves) * Math.expm1((octaves * n) / length));
  });
}

function worstErrors(scenario: ScenarioCase, kind: ShortSignal, rate: number) {
  const input = shortSignal(kind, rate);
  const file = encodeWav({ sampleRateHz: rate, channels: [input] }, "float32");
  return errorsOf(scenario, { file }, input);
}

function errorsOf({ build, settings }: ScenarioCase, signal: SignalSource, input: Float32Array) {
  const renderer = createRenderer({ build, signal }, settings, WORK);
  let decibels = 0;
  let degrees = 0;
  for (const each of settings) {
    const output = renderer.render(each).channels[0]!;
    const measured = measuredTransfer(input, output, renderer.sampleRateHz, renderer.delaySamples);
    const curve = curveIn(build, each, measured.frequenciesHz);
    if (Math.max(...curve.magnitude) < ROUNDING_DB) {
      expect(Math.max(...measured.magnitude)).toBeLessThan(ROUNDING_DB);
      continue;
    }
    decibels = Math.max(decibels, largestDifference(measured.magnitude, curve.magnitude));
    const turned = curve.phase.map((phase, i) => {
      const difference = (((phase - measured.phase[i]!) % 360) + 540) % 360;
      return difference - 180;
    });
    degrees = Math.max(degrees, largestDifference(turned, new Float64Array(turned.length)));
  }
  return { decibels, degrees };
}

/** Every rate for these; the other scenarios are heard at 48 kHz. */
const AT_EVERY_RATE = ["hss-250k-or-500k", "long-cable", "tone-cap-22-or-47"];
const fully = SCENARIOS.filter(({ name }) => AT_EVERY_RATE.includes(name));

describe.each(fully)("the transfer function measured from renderings of $name equals the curve", (scenario) => {
  it.each([
    ["click", 44_100],
    ["click", 48_000],
    ["click", 96_000],
    ["sweep", 44_100],
    ["noise", 48_000],
    ["sweep", 96_000],
  ] as const)("from a short %s, in every setting at %d Hz", (kind, rate) => {
    const { decibels, degrees } = worstErrors(scenario, kind, rate);
    expect(decibels).toBeLessThan(TOLERANCE_DB);
    expect(degrees).toBeLessThan(TOLERANCE_DEGREES);
  });
});

it.each(SCENARIOS)("so it does from a click, in every setting of $name", (scenario) => {
  const { decibels, degrees } = worstErrors(scenario, "click", 48_000);
  expect(decibels).toBeLessThan(TOLERANCE_DB);
  expect(degrees).toBeLessThan(TOLERANCE_DEGREES);
});

it.each(["sweep", "noise", "click"] as const)("the built-in %s shows the curve too", (name) => {
  const sampleRateHz = 48_000;
  const input = testSignal(name, sampleRateHz).channels[0]!;
  const few = { ...SCENARIOS[0]!, settings: SCENARIOS[0]!.settings.slice(0, 3) };
  expect(errorsOf(few, { name, sampleRateHz }, input).decibels).toBeLessThan(TOLERANCE_DB);
});
