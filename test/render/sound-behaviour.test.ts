import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { SCENARIOS, settingsOf, WORK } from "./scenario-settings.ts";
import { peakOf } from "./spectra.ts";

const RATE = 48_000;
const build = readBuild(threeSingles());

function renderFile(channels: Float32Array[], raw: Record<string, number> = {}) {
  const file = encodeWav({ sampleRateHz: RATE, channels }, "float32");
  const settings = settingsOf(build, raw);
  const renderer = createRenderer({ build, signal: { file } }, [settings], WORK);
  return { ...renderer.render(settings), delaySamples: renderer.delaySamples };
}

const samples = fc
  .array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 300 })
  .map((list) => Float32Array.from(list));

describe("a rendering", () => {
  it("is silent for silence", () => {
    const { channels } = renderFile([new Float32Array(1000)]);
    expect(channels[0]!.every((sample) => sample === 0)).toBe(true);
  });

  it("is linear: twice the input is twice the output", () => {
    fc.assert(
      fc.property(samples, (input) => {
        const once = renderFile([input]).channels[0]!;
        const twice = renderFile([input.map((sample) => 2 * sample)]).channels[0]!;
        for (let n = 0; n < once.length; n++) expect(twice[n]).toBeCloseTo(2 * once[n]!, 5);
      }),
      { numRuns: 20 },
    );
  });

  it("keeps the tail of the filter, so nothing is cut off at the end", () => {
    const input = new Float32Array(2000);
    input[1999] = 1;
    const { channels } = renderFile([input], { lever: 2, tone: 0 });
    const tail = channels[0]!.subarray(2000);
    expect(tail.length).toBeGreaterThan(200);
    expect(peakOf(tail)).toBeGreaterThan(0.001);
    expect(Math.abs(tail.at(-1)!)).toBeLessThan(1e-5);
  });

  it.each(SCENARIOS)("of $name has no output before its cause", (scenario) => {
    const renderer = createRenderer(
      { build: scenario.build, signal: { name: "click", sampleRateHz: RATE } },
      scenario.settings,
      WORK,
    );
    const click = Math.round(0.01 * RATE);
    for (const settings of scenario.settings) {
      const output = renderer.render(settings).channels[0]!;
      // The band limit rings for at most the filter's delay before the response; nothing stands before that.
      for (let n = 0; n < click - 1; n++) if (Math.abs(output[n]!) > 1e-9) expect(output[n]).toBe(0);
      const before = output.subarray(click, click + renderer.delaySamples - 16);
      const largest = peakOf(output);
      expect(peakOf(before)).toBeLessThanOrEqual(0.05 * largest);
    }
  });

  it("renders a stereo file channel by channel", () => {
    const left = new Float32Array(500);
    const right = new Float32Array(500);
    left[10] = 0.5;
    right[200] = -0.25;
    const stereo = renderFile([left, right]).channels;
    expect(stereo).toHaveLength(2);
    expect(stereo[0]).toEqual(renderFile([left]).channels[0]);
    expect(stereo[1]).toEqual(renderFile([right]).channels[0]);
  });

  it("is what the end of the track leaks, and no NaN, with the volume at 0", () => {
    const { channels } = renderFile([Float32Array.of(1, -1, 0.5)], { volume: 0 });
    expect(channels[0]!.every((sample) => Math.abs(sample) < 5e-4)).toBe(true);
  });

  it("stops at the next checkpoint when told to", () => {
    let calls = 0;
    const work = {
      checkpoint() {
        calls += 1;
        if (calls > 3) throw new RangeError("stop");
      },
    };
    const settings = settingsOf(build, {});
    const request = { build, signal: { name: "noise", sampleRateHz: RATE } };
    expect(() => createRenderer(request, [settings], work).render(settings)).toThrow("stop");
    expect(calls).toBe(4);
  });
});
