import { describe, expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { type ImpulseRequest, renderImpulse } from "../../src/render/impulse.ts";
import { onePickup, threeSingles } from "../fixtures/circuits.ts";
import { curveIn, settingsOf } from "./scenario-settings.ts";
import { largestDifference, measuredTransfer } from "./spectra.ts";

const build = readBuild(threeSingles());
const RATE = 44_100;

function measured(request: Partial<ImpulseRequest>) {
  const answer = renderImpulse({ build, settings: settingsOf(build, {}), sampleRateHz: RATE, ...request });
  const { sampleRateHz, channels } = decodeWav(answer.wav);
  const response = new Float32Array(2 ** 16);
  response.set(channels[0]!);
  return { ...answer, ...measuredTransfer(Float32Array.of(1), response, sampleRateHz, answer.delaySamples) };
}

describe("an impulse response", () => {
  it.each([{ lever: 1 }, { lever: 2, tone1: 3 }, { lever: 4, tone: 0 }])(
    "of all coils together is the curve at %o",
    (raw) => {
      const settings = settingsOf(build, raw);
      const { frequenciesHz, magnitude } = measured({ settings });
      expect(largestDifference(magnitude, curveIn(build, settings, frequenciesHz).magnitude)).toBeLessThan(0.05);
    },
  );

  it.each(["neck.coil", "neck", "middle"])("of %s alone is that coil's own transfer", (coil) => {
    const settings = settingsOf(build, { lever: 4 });
    const { frequenciesHz, magnitude } = measured({ settings, coil });
    const curve = curveIn(build, settings, frequenciesHz, { withSources: true });
    const source = curve.sources!.find(({ pickup }) => pickup === coil.split(".")[0])!;
    expect(largestDifference(magnitude, source.magnitude)).toBeLessThan(0.05);
  });

  it("as the ratio of two builds is the difference of their curves", () => {
    const over = readBuild(onePickup());
    const { frequenciesHz, magnitude } = measured({ over: { build: over, settings: settingsOf(over, {}) } });
    const above = curveIn(build, settingsOf(build, {}), frequenciesHz).magnitude;
    const below = curveIn(over, settingsOf(over, {}), frequenciesHz).magnitude;
    expect(
      largestDifference(
        magnitude,
        above.map((level, i) => level - below[i]!),
      ),
    ).toBeLessThan(0.1);
  });

  it("names the coils there are where it is asked for another", () => {
    expect(() => measured({ coil: "nek.coil" })).toThrow(/neck\.coil.*did you mean "neck\.coil"/);
  });
});
