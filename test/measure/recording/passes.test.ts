import { describe, expect, it } from "vitest";
import { aligned, type Pass } from "../../../src/measure/recording/passes.ts";
import { TONES_HZ } from "../../../src/measure/signal/multitone.ts";

const FREQUENCIES_HZ = Float64Array.from(TONES_HZ);
const HUM_AT = TONES_HZ.indexOf(50);
const LATE_SECONDS = 50e-9;

/** Behind half a megohm with 160 pF across the input: what is left of the treble hardly outweighs hum. */
const passAt = (index: number, seconds: number, hum: number): Pass => {
  const points = TONES_HZ.map((hz, i) => {
    const x = hz / 2100;
    const [re, im] = [1 / (1 + x * x), -x / (1 + x * x)];
    const turn = -2 * Math.PI * hz * seconds;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return [re * cos - im * sin, re * sin + im * cos + (i === HUM_AT ? hum : 0)];
  });
  return { index, re: Float64Array.from(points, ([re]) => re!), im: Float64Array.from(points, ([, im]) => im!) };
};

/** As the quiet stretch tells it, spread over the neighbours; 1e-5 is hiss. */
const noiseOf = (hum: number) =>
  FREQUENCIES_HZ.map((_, i) => Math.hypot(1e-5, Math.abs(i - HUM_AT) <= 4 ? hum / 9 : 0));

/** Nanoseconds by which the second pass still comes later than the first, by its highest tones. */
function leftNanoseconds(hum: number, noise: Float64Array): number {
  const [first, second] = aligned([passAt(0, 0, hum), passAt(1, LATE_SECONDS, -2 * hum)], FREQUENCIES_HZ, noise);
  const at = TONES_HZ.length - 1;
  const angle = ({ re, im }: Pass) => Math.atan2(im[at]!, re[at]!);
  return (1e9 * (angle(first!) - angle(second!))) / (2 * Math.PI * TONES_HZ[at]!);
}

describe("passes of which one comes 50 ns late", () => {
  it("are brought to one time", () => expect(Math.abs(leftNanoseconds(0, noiseOf(0)))).toBeLessThan(0.01));

  it("are so through hum that stands in one tone, which by itself would make it nanoseconds", () => {
    expect(Math.abs(leftNanoseconds(0.1, noiseOf(0.1)))).toBeLessThan(0.01);
    expect(Math.abs(leftNanoseconds(0.1, noiseOf(0)))).toBeGreaterThan(1);
  });

  it("are brought to one time where the quiet stretch holds nothing at all", () =>
    expect(Math.abs(leftNanoseconds(0, new Float64Array(TONES_HZ.length)))).toBeLessThan(0.01));
});
