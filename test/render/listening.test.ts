import { describe, expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { createChain } from "../../src/listening/chain.ts";
import { speakerDecibels } from "../../src/listening/speaker/response.ts";
import type { AskedListening } from "../../src/render/heard-through.ts";
import { renderPreview } from "../../src/render/preview.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { noise } from "../filter/noise.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { curveIn, settingsOf, WORK } from "./scenario-settings.ts";
import { largestDifference, measuredTransfer } from "./spectra.ts";

const build = readBuild(threeSingles());
const settings = settingsOf(build, { lever: 2, tone: 6 });

/** Half a second of noise, and how it is heard. */
function heard(rate: number, listening: AskedListening | undefined, volts = 1) {
  const input = noise(rate / 2, 7).map((sample) => sample * volts);
  const file = encodeWav({ sampleRateHz: rate, channels: [input] }, "float32");
  const renderer = createRenderer({ build, signal: { file }, listening }, [settings], WORK);
  return { input, output: renderer.render(settings).channels[0]!, delaySamples: renderer.delaySamples };
}

function transferThrough(rate: number, listening: AskedListening | undefined, volts = 1) {
  const { input, output, delaySamples } = heard(rate, listening, volts);
  return measuredTransfer(input, output, rate, delaySamples);
}

describe("a rendering through the clean amplifier and the stated speaker", () => {
  it.each([
    ["not driven", 44_100, { drive: 0 }, 1],
    ["not driven", 48_000, { drive: 0 }, 1],
    ["not driven", 96_000, { drive: 0 }, 1],
    ["not driven", 192_000, { drive: 0 }, 1],
    // So quiet that nothing bends; the make-up gain is 0.03 dB.
    ["hardly driven", 44_100, { drive: 0.5 }, 1e-4],
  ] as const)(
    "%s is the curve and the speaker's, within 0.1 dB from 20 Hz to 18 kHz, at %d Hz",
    (_, rate, listening, volts) => {
      const { frequenciesHz, magnitude } = transferThrough(rate, listening, volts);
      const curve = curveIn(build, settings, frequenciesHz).magnitude;
      const wanted = curve.map((level, i) => level + speakerDecibels(frequenciesHz[i]!));
      expect(largestDifference(magnitude, wanted)).toBeLessThan(0.1);
    },
  );

  it("leaves the sound at the jack as it is where no chain is asked for", () => {
    expect(heard(48_000, undefined).delaySamples).toBe(48);
  });

  it("is equally late, driven or not", () => {
    expect(heard(48_000, { drive: 7 }).delaySamples).toBe(heard(48_000, { drive: 0 }).delaySamples);
  });
});

describe("drive", () => {
  /** A second of a note that dies away, its first half volt as high as a strummed chord's. */
  const note = Float32Array.from({ length: 48_000 }, (_, n) => 0.5 * Math.exp(-n / 9000) * Math.sin(0.02 * n));
  const file = encodeWav({ sampleRateHz: 48_000, channels: [note] }, "float32");
  const preview = (volume: number, drive: number | undefined) =>
    renderPreview(
      {
        build,
        signal: { file },
        settings: settingsOf(build, { lever: 1, volume }),
        level: "matched",
        encoding: "float32",
        listening: drive === undefined ? undefined : { drive },
      },
      WORK,
    );
  /** How much louder the loudest moment is than the whole, in dB: clipping takes it down. */
  const crest = ({ truePeakDbtp, lufs }: ReturnType<typeof preview>) => truePeakDbtp! - lufs!;

  it("is set by the volts of the circuit, not by the level of the answer: it cleans up when the volume comes down", () => {
    const [full, half, clean] = [preview(10, 9), preview(4, 9), preview(10, 0)].map(crest) as [number, number, number];
    expect(clean - full).toBeGreaterThan(2.5);
    expect(half - full).toBeGreaterThan(2);
  });

  it("comes before the level is matched", () => {
    expect(preview(10, 9).lufs).toBeCloseTo(preview(10, undefined).lufs!, 1);
  });
});

describe("a chain", () => {
  it("takes stereo channel by channel", () => {
    const chain = createChain({ drive: 5 }, 48_000);
    const left = noise(4000, 3);
    const { channels } = chain.through({ sampleRateHz: 48_000, channels: [left, new Float32Array(4000)] });
    expect(channels).toHaveLength(2);
    expect(channels[1]!.every((sample) => sample === 0)).toBe(true);
    expect([...channels[0]!]).toEqual([...chain.through({ sampleRateHz: 48_000, channels: [left] }).channels[0]!]);
  });

  it("gives silence and single samples back whole", () => {
    const chain = createChain({ drive: 10 }, 44_100);
    for (const length of [1, 2, 1000]) {
      const [output] = chain.through({ sampleRateHz: 44_100, channels: [new Float32Array(length)] }).channels;
      expect(output!.length).toBeGreaterThan(length);
      expect(output!.every((sample) => sample === 0)).toBe(true);
    }
  });

  it("stops between stretches where nobody waits any more", () => {
    const stop = () => {
      throw new Error("stopped");
    };
    const sound = { sampleRateHz: 48_000, channels: [new Float32Array(200_000)] };
    expect(() => createChain({ drive: 3 }, 48_000).through(sound, stop)).toThrow("stopped");
  });
});
