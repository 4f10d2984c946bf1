import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../../src/audio/wav-encode.ts";
import { examineRequestSchema } from "../../../../src/contract/examine/examine-request.ts";
import { measureRequestSchema } from "../../../../src/contract/measure/measure.ts";
import { MAX_MEASURED_SAMPLES, MAX_TAKES } from "../../../../src/limits.ts";
import { examineJob } from "../../../../src/server/jobs/measure/examine.ts";
import { measureJob } from "../../../../src/server/jobs/measure/measure.ts";
import { scenarioBuilds } from "../../../bench/scenario-builds.ts";

/** A stereo file that says how long it is, and has no samples that anybody reads before that. */
function longWav(sampleRateHz: number, seconds: number): Uint8Array {
  const header = encodeWav({ sampleRateHz, channels: [new Float32Array(1), new Float32Array(1)] }, "pcm16").slice(
    0,
    44,
  );
  const size = 4 * sampleRateHz * seconds;
  const bytes = new Uint8Array(44 + size);
  bytes.set(header);
  const view = new DataView(bytes.buffer);
  view.setUint32(4, 36 + size, true);
  view.setUint32(40, size, true);
  return bytes;
}

const REFUSED =
  /^body: the recordings have [\d.]+ million samples in all channels together; expected at most 60\.0\. Record at 48 kHz, .*fewer recordings$/;

describe("more sound than one request may bring is refused before any of it is read", () => {
  const examine = (file: Uint8Array) => {
    const names = Array.from({ length: MAX_TAKES }, (_, i) => `take${i + 1}`);
    const request = {
      build: scenarioBuilds[0]!.build,
      takes: names.map((name) => ({ file: name, settings: {}, through: "jack" })),
      rig: { resistor: "10k" },
    };
    const files = Object.fromEntries(names.map((name) => [name, file]));
    return () => examineJob.read(examineRequestSchema.parse(request), files);
  };

  it("by an examination: every take it may have at 192 kHz, and not at 48 kHz", () => {
    expect(MAX_TAKES * 2 * 17 * 48_000).toBeLessThan(MAX_MEASURED_SAMPLES);
    expect(examine(longWav(192_000, 17))).toThrow(REFUSED);
    expect(examine(longWav(48_000, 17))).not.toThrow();
  });

  it("by a measurement: four files of a minute at 192 kHz, and not of 18 s", () => {
    const measure = (file: Uint8Array) => () =>
      measureJob.read(measureRequestSchema.parse({ method: "series-resistor", part: "coil", resistor: "10k" }), {
        measured: file,
        gain: file,
        open: file,
        short: file,
      });
    expect(measure(longWav(192_000, 60))).toThrow(REFUSED);
    expect(measure(longWav(192_000, 18))).not.toThrow();
  });
});
