import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { ENCODINGS, encodeByPackage, encodeWav } from "../../src/audio/wav-encode.ts";
import { casesOf } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { run, sines, withDirectory, written } from "./audio-files.ts";

const LSB_16 = 1 / 32_768;
const sounds = fc
  .tuple(fc.constantFrom(8000, 44_100, 192_000), fc.integer({ min: 1, max: 2 }), fc.integer({ min: 0, max: 300 }))
  .chain(([sampleRateHz, channels, length]) =>
    fc
      .array(fc.float32Array({ min: -3, max: 3, noNaN: true, minLength: length, maxLength: length }), {
        minLength: channels,
        maxLength: channels,
      })
      .map((samples) => ({ sampleRateHz, channels: samples })),
  );

describe("encodeWav", () => {
  it("writes 16 bits as the encoder package does, within one step", () => {
    fc.assert(
      fc.property(sounds, fc.constantFrom(1, 0.3), (sound, gain) => {
        const quick = encodeWav(sound, "pcm16", gain);
        const channels = sound.channels.map((samples) => samples.map((sample) => sample * gain));
        const reference = encodeByPackage({ ...sound, channels }, "pcm16");
        expect(quick.subarray(0, 44)).toEqual(reference.subarray(0, 44));
        const [a, b] = [quick, reference].map((file) => new Int16Array(file.buffer, 44));
        expect(a!.length).toBe(b!.length);
        for (let n = 0; n < a!.length; n++) expect(Math.abs(a![n]! - b![n]!)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it.each([
    ["pcm16", 1.5 * LSB_16],
    ["pcm24", 2 ** -23],
    ["float32", 0],
  ] as const)("%s reads back within its step, full scale excepted", (encoding, step) => {
    const sound = sines(44_100, 0.1, [441, 1000], 0.9);
    const decoded = decodeWav(encodeWav(sound, encoding));
    decoded.channels.forEach((samples, channel) => {
      const worst = Math.max(...samples.map((sample, n) => Math.abs(sample - sound.channels[channel]![n]!)));
      expect(worst).toBeLessThanOrEqual(step);
    });
  });

  it.each(["pcm16", "pcm24"] as const)("%s holds samples beyond full scale at its end and never wraps", (encoding) => {
    const sound = { sampleRateHz: 48_000, channels: [Float32Array.of(1, 1.5, 1e6, 3e38, -1, -1.5, -1e6, -3e38)] };
    const samples = decodeWav(encodeWav(sound, encoding)).channels[0]!;
    expect(samples.subarray(0, 4).every((sample) => sample > 0.9999)).toBe(true);
    expect(samples.subarray(4).every((sample) => sample < -0.9999)).toBe(true);
  });

  it("keeps silence within the dither, one step, and centred", () => {
    const length = 100_000;
    const steps = new Int16Array(
      encodeWav({ sampleRateHz: 48_000, channels: [new Float32Array(length)] }, "pcm16").buffer,
      44,
    );
    expect(Math.max(...steps.map(Math.abs))).toBe(1);
    // Triangular dither of silence gives ±1 an eighth of the time each: a variance of 1/4, the mean within 4 sigma.
    expect(Math.abs(steps.reduce((sum, step) => sum + step, 0) / length)).toBeLessThan(4 * Math.sqrt(0.25 / length));
    expect(steps.reduce((sum, step) => sum + step * step, 0) / length).toBeCloseTo(0.25, 2);
  });

  it("keeps a level below one step audible in the mean, as dither should", () => {
    const length = 100_000;
    const quarter = new Float32Array(length).fill(0.25 * LSB_16);
    const steps = new Int16Array(encodeWav({ sampleRateHz: 48_000, channels: [quarter] }, "pcm16").buffer, 44);
    expect(steps.reduce((sum, step) => sum + step, 0) / length).toBeCloseTo(0.25, 2);
  });

  it.each([0, 0.1, 0.25, 0.5, 0.8])("has an error of the same mean and power whatever the level, %d steps", (level) => {
    const length = 200_000;
    const samples = new Float32Array(length).fill(level * LSB_16);
    const file = encodeWav({ sampleRateHz: 48_000, channels: [samples, samples] }, "pcm16");
    const steps = new Int16Array(file.buffer, 44);
    const errors = Float64Array.from(steps, (step) => step - level);
    // Triangular dither: ± one step, so a quarter of a step squared with the rounding (Lipshitz et al. 1992); 5 sigma.
    expect(Math.abs(errors.reduce((sum, error) => sum + error, 0) / errors.length)).toBeLessThan(0.004);
    expect(errors.reduce((sum, error) => sum + error * error, 0) / errors.length).toBeCloseTo(0.25, 2);
  });

  it("dithers two channels independently of each other", () => {
    const silence = new Float32Array(200_000);
    const steps = new Int16Array(encodeWav({ sampleRateHz: 48_000, channels: [silence, silence] }, "pcm16").buffer, 44);
    let product = 0;
    for (let n = 0; n < steps.length; n += 2) product += steps[n]! * steps[n + 1]!;
    // Of two independent signals of power 1/4: 5 sigma of the mean product.
    expect(Math.abs(product / silence.length)).toBeLessThan((5 * 0.25) / Math.sqrt(silence.length));
  });

  it("multiplies by a gain in every encoding", () => {
    const sound = sines(48_000, 0.05, [997], 0.5);
    for (const encoding of ENCODINGS) {
      const samples = decodeWav(encodeWav(sound, encoding, 0.5)).channels[0]!;
      const worst = Math.max(...samples.map((sample, n) => Math.abs(sample - 0.5 * sound.channels[0]![n]!)));
      expect(worst).toBeLessThanOrEqual(1.5 * LSB_16);
    }
  });

  it.each(ENCODINGS)("gives the same bytes for the same sound in %s", (encoding) => {
    const sound = sines(48_000, 0.05, [997], 0.5);
    expect(encodeWav(sound, encoding)).toEqual(encodeWav(sound, encoding));
  });

  it("pads 24-bit mono of odd length to an even file", () => {
    const file = encodeWav({ sampleRateHz: 48_000, channels: [new Float32Array(7)] }, "pcm24");
    expect(file.length).toBe(44 + 21 + 1);
    expect(new DataView(file.buffer).getUint32(4, true)).toBe(file.length - 8);
    expect(decodeWav(file).channels[0]!.length).toBe(7);
  });

  it.each(ENCODINGS)("refuses samples that are not finite in %s", (encoding) => {
    const channels = [Float32Array.of(0, Number.NaN)];
    expect(() => encodeWav({ sampleRateHz: 48_000, channels }, encoding)).toThrow("Sample 1 is NaN");
  });

  it("refuses channels of different length or none", () => {
    expect(() => encodeWav({ sampleRateHz: 48_000, channels: [] }, "pcm16")).toThrow(RangeError);
    const channels = [new Float32Array(2), new Float32Array(3)];
    expect(() => encodeWav({ sampleRateHz: 48_000, channels }, "pcm16")).toThrow(RangeError);
  });
});

const CODECS = { pcm16: "pcm_s16le", pcm24: "pcm_s24le", float32: "pcm_f32le" } as const;
const cases = ENCODINGS.flatMap((encoding) =>
  [8000, 44_100, 48_000, 96_000, 192_000].map((rate) => [encoding, rate] as const),
);

describeWith("ffprobe", "written files opened by ffprobe", () => {
  it.each(casesOf(cases, 8))("%s at %d Hz has its codec, rate, channels and length", (encoding, rate) => {
    withDirectory((directory) => {
      const path = written(directory, "a.wav", encodeWav(sines(rate, 1001 / rate, [440, 500], 0.5), encoding));
      const shown = run("ffprobe", [
        "-v",
        "error",
        "-show_entries",
        "stream=codec_name,sample_rate,channels,duration_ts",
        "-of",
        "json",
        path,
      ]);
      const [stream] = (JSON.parse(shown.toString()) as { streams: unknown[] }).streams;
      expect(stream).toMatchObject({
        codec_name: CODECS[encoding],
        sample_rate: `${rate}`,
        channels: 2,
        duration_ts: 1001,
      });
    });
  });
});

describeWith("sox", "written files opened by sox", () => {
  it.each(casesOf(cases, 8))("%s at %d Hz gives sox the samples that were written", (encoding, rate) => {
    withDirectory((directory) => {
      const sound = sines(rate, 1001 / rate, [440], 0.5);
      const path = written(directory, "a.wav", encodeWav(sound, encoding));
      expect(run("sox", ["--i", "-r", path]).toString().trim()).toBe(`${rate}`);
      expect(run("sox", ["--i", "-s", path]).toString().trim()).toBe("1001");
      const bytes = run("sox", ["-D", path, "-t", "f32", "-"]);
      const samples = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
      const worst = Math.max(...samples.map((sample, n) => Math.abs(sample - sound.channels[0]![n]!)));
      expect(samples.length).toBe(1001);
      expect(worst).toBeLessThan(1.6 * LSB_16);
    });
  });
});
