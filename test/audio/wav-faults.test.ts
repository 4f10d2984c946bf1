import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { PresolderError } from "../../src/errors.ts";

const tone = { sampleRateHz: 48_000, channels: [Float32Array.from({ length: 480 }, (_, n) => Math.sin(n / 10) / 2)] };

function patched(change: (view: DataView) => void, file = encodeWav(tone, "pcm16")): Uint8Array {
  const copy = file.slice();
  change(new DataView(copy.buffer));
  return copy;
}

function faultOf(bytes: Uint8Array): PresolderError {
  try {
    decodeWav(bytes);
  } catch (error) {
    if (error instanceof PresolderError) return error;
    throw error;
  }
  throw new Error("the file was accepted");
}

function chunk(id: string, body: readonly number[]): number[] {
  const size = [body.length & 255, body.length >> 8, 0, 0];
  return [...Buffer.from(id, "latin1"), ...size, ...body, ...(body.length % 2 ? [0] : [])];
}

function wav(...chunks: readonly number[][]): Uint8Array {
  const body = [...Buffer.from("WAVE", "latin1"), ...chunks.flat()];
  const size = [body.length & 255, body.length >> 8, 0, 0];
  return Uint8Array.from([...Buffer.from("RIFF", "latin1"), ...size, ...body]);
}

const FORMAT_8_BIT = [1, 0, 1, 0, 0x40, 0x1f, 0, 0, 0x40, 0x1f, 0, 0, 1, 0, 8, 0];

const INVALID: readonly [string, Uint8Array, RegExp][] = [
  ["an empty file", new Uint8Array(0), /found an empty one/],
  ["a PNG named .wav", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13), /found a PNG picture/],
  ["an MP3", Uint8Array.from(Buffer.from("ID3\x04 and so on", "latin1")), /found MP3/],
  ["a text", Uint8Array.from(Buffer.from("hello, world", "latin1")), /begins with 68 65 6c 6c/],
  [
    "a file cut short",
    encodeWav(tone, "pcm16").subarray(0, 700),
    /announces 960 bytes of samples and the file holds 656/,
  ],
  ["a header alone", encodeWav(tone, "pcm16").subarray(0, 36), /ends without one/],
  [
    "a fmt chunk cut short",
    encodeWav(tone, "pcm16").subarray(0, 30),
    /ends inside its "fmt " chunk: 16 bytes announced, 10 there/,
  ],
  ["a header that promises more", patched((v) => v.setUint32(40, 1_000_000, true)), /announces 1000000 bytes/],
  [
    "an open length in a file that knows its own",
    patched((v) => v.setUint32(40, 0xffffffff, true)),
    /announces 4294967295/,
  ],
  ["a header that promises less", patched((v) => v.setUint32(40, 100, true)), /lengths disagree/],
  ["half a frame", patched((v) => v.setUint32(40, 959, true)), /959 bytes of samples are not a whole number/],
  ["MS ADPCM", patched((v) => v.setUint16(20, 2, true)), /found 16-bit MS ADPCM/],
  ["an unknown codec", patched((v) => v.setUint16(20, 0x1234, true)), /found 16-bit samples of format 4660/],
  ["12-bit samples", patched((v) => v.setUint16(34, 12, true)), /found 12-bit integers/],
  [
    "a block align of nonsense",
    patched((v) => v.setUint16(32, 7, true)),
    /says 7 bytes a frame, and 1 channels of 16 bits make 2/,
  ],
  ["no channels", patched((v) => v.setUint16(22, 0, true)), /0 channels/],
  ["samples before their format", wav(chunk("data", [1, 2])), /fmt chunk before the samples/],
  [
    "a short fmt chunk",
    wav(chunk("fmt ", FORMAT_8_BIT.slice(0, 14)), chunk("data", [1])),
    /has 14 bytes, expected at least 16/,
  ],
  [
    "a chunk that is none",
    wav(chunk("fmt ", FORMAT_8_BIT), [0, 1, 2, 3, 4, 5, 6, 7, 8]),
    /expected a chunk at byte 36/,
  ],
  [
    "a foreign extensible codec",
    wav(chunk("fmt ", [0xfe, 0xff, ...FORMAT_8_BIT.slice(2), ...new Array(24).fill(9)])),
    /ends without/,
  ],
];

describe("decodeWav refuses, naming the signal,", () => {
  it.each(INVALID)("%s", (_, bytes, message) => {
    const fault = faultOf(bytes);
    expect(fault.code).toBe("WAV_INVALID");
    expect(fault.message).toMatch(message);
    expect(fault.faults).toEqual([{ path: "signal", message: fault.message }]);
  });

  it("an extensible file whose codec is no plain one", () => {
    const format = [0xfe, 0xff, ...FORMAT_8_BIT.slice(2), ...new Array<number>(24).fill(9)];
    expect(faultOf(wav(chunk("fmt ", format), chunk("data", [128, 128]))).message).toMatch(/names a codec of its own/);
  });

  it.each([
    ["a rate of 0 Hz", patched((v) => v.setUint32(24, 0, true)), "a sample rate of 0 Hz, expected 8000 to 192000 Hz"],
    [
      "an absurd rate",
      patched((v) => v.setUint32(24, 4e9, true)),
      "a sample rate of 4000000000 Hz, expected 8000 to 192000 Hz",
    ],
    [
      "six channels",
      patched((v) => [22, 32].forEach((at) => void v.setUint16(at, at === 22 ? 6 : 12, true))),
      "6 channels, expected at most 2",
    ],
    [
      "a sound over a minute",
      encodeWav({ sampleRateHz: 8000, channels: [new Float32Array(480_080)] }, "pcm16"),
      "the sound lasts 60.01 s, expected at most 60 s",
    ],
  ])("%s as over a limit", (_, bytes, message) => {
    expect(faultOf(bytes)).toMatchObject({ code: "LIMIT_EXCEEDED", message });
  });

  it("no samples at all", () => {
    const empty = encodeWav({ sampleRateHz: 48_000, channels: [new Float32Array(0)] }, "pcm16");
    expect(faultOf(empty)).toMatchObject({
      code: "SOUND_UNUSABLE",
      message: "the file has no samples, expected at least one",
    });
  });

  it.each([Number.NaN, Infinity, -Infinity, 3e38, -300])("a sample of %d, telling which", (value) => {
    const file = patched((v) => v.setFloat32(44 + 4 * 17, value, true), encodeWav(tone, "float32"));
    expect(faultOf(file)).toMatchObject({
      code: "SOUND_UNUSABLE",
      message: expect.stringMatching(/^sample 17 of channel 1 is /),
    });
  });

  it("any damaged file with a PresolderError or reads it as finite sound", () => {
    const file = encodeWav(tone, "pcm24");
    const damage = fc.array(fc.tuple(fc.nat({ max: 60 }), fc.nat({ max: 255 })), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(damage, fc.nat({ max: file.length }), (bytes, length) => {
        const copy = file.slice(0, length);
        for (const [at, value] of bytes) if (at < copy.length) copy[at] = value;
        try {
          for (const samples of decodeWav(copy).channels) expect(samples.every(Number.isFinite)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(PresolderError);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe("decodeWav accepts", () => {
  it("odd chunks with pad bytes before and after the samples", () => {
    const list = chunk("LIST", [1, 2, 3]);
    const file = wav(list, chunk("fmt ", FORMAT_8_BIT), chunk("junk", [9]), chunk("data", [0, 128, 192]), list);
    expect(decodeWav(file).channels).toEqual([Float32Array.of(-1, 0, 0.5)]);
  });

  it("a missing pad byte after the samples, as some writers leave it out", () => {
    const data = chunk("data", [0, 128, 192]).slice(0, -1);
    expect(decodeWav(wav(chunk("fmt ", FORMAT_8_BIT), data, chunk("LIST", [1, 2]))).channels[0]!.length).toBe(3);
  });

  it("bytes of a larger buffer, at any offset", () => {
    const file = encodeWav(tone, "pcm24");
    const larger = new Uint8Array(file.length + 3);
    larger.set(file, 3);
    expect(decodeWav(larger.subarray(3))).toEqual(decodeWav(file));
  });

  it("exactly one minute", () => {
    const minute = encodeWav({ sampleRateHz: 8000, channels: [new Float32Array(480_000)] }, "pcm16");
    expect(decodeWav(minute).channels[0]!.length).toBe(480_000);
  });
});
