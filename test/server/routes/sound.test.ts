import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { integratedLoudness } from "../../../src/audio/loudness.ts";
import { testSignal } from "../../../src/audio/signals.ts";
import { decodeWav } from "../../../src/audio/wav-decode.ts";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { curveOf } from "../../../src/response/curve.ts";
import { solvedTransfers } from "../../../src/response/transfers.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { curveIn, settingsOf } from "../../render/scenario-settings.ts";
import { largestDifference, measuredTransfer } from "../../render/spectra.ts";
import { describeWith } from "../../tools.ts";
import { useService, withFile } from "../service.ts";

const service = useService();
const guard = threeSingles({ rest: { title: "=cmd|' /C calc'!A0" } });
const build = readBuild(guard);

const post = (url: string, payload: object) =>
  service.app.inject({ method: "POST", url, payload: { build: guard, ...payload } });

function onDisk<T>(bytes: Uint8Array, use: (file: string) => T): T {
  const directory = mkdtempSync(join(tmpdir(), "presolder-"));
  try {
    writeFileSync(join(directory, "preview.wav"), bytes);
    return use(join(directory, "preview.wav"));
  } finally {
    rmSync(directory, { recursive: true });
  }
}

describe("POST /api/preview", () => {
  it("plays the strum at 48 kHz in 16 bits and at the true level unless told otherwise", async () => {
    const reply = await post("/api/preview", {});
    expect(reply.statusCode).toBe(200);
    expect(reply.headers).toMatchObject({
      "content-type": "audio/wav",
      "cache-control": "no-store",
      "presolder-gain-db": "0.00",
      "presolder-delay-samples": "48",
      "presolder-places-assumed": "neck, middle, bridge",
    });
    const { sampleRateHz, channels } = decodeWav(reply.rawPayload);
    expect(sampleRateHz).toBe(48_000);
    expect(channels).toHaveLength(1);
    expect(Number(reply.headers["presolder-lufs"])).toBeCloseTo(integratedLoudness({ sampleRateHz, channels })!, 1);
  });

  it.each([
    [44_100, "float32", { lever: 2, tone: 5 }],
    [96_000, "pcm24", { lever: 4, tone: 0 }],
  ] as const)("renders noise at %d Hz in %s whose transfer function is the curve", async (rate, encoding, settings) => {
    const reply = await post("/api/preview", { signal: "noise", rate, encoding, settings });
    const input = testSignal("noise", rate).channels[0]!;
    const output = decodeWav(reply.rawPayload).channels[0]!;
    const delay = Number(reply.headers["presolder-delay-samples"]);
    const { frequenciesHz, magnitude } = measuredTransfer(input, output, rate, delay);
    expect(
      largestDifference(magnitude, curveIn(build, settingsOf(build, settings), frequenciesHz).magnitude),
    ).toBeLessThan(0.05);
  });

  it.each([
    [96_000, 45_000],
    [192_000, 90_000],
  ])("at %d Hz renders the plain solution's curve up to %d Hz", async (rate, topHz) => {
    const settings = { lever: 4, tone: 7 };
    const reply = await post("/api/preview", { signal: "click", rate, encoding: "float32", settings });
    const input = testSignal("click", rate).channels[0]!;
    const output = decodeWav(reply.rawPayload).channels[0]!;
    const delay = Number(reply.headers["presolder-delay-samples"]);
    const measured = measuredTransfer(input, output, rate, delay, 20, topHz);
    const maker = new CircuitMaker(build);
    const solved = solvedTransfers(maker.circuitIn(settingsOf(build, settings)), maker.sources);
    const { magnitude } = curveOf(solved, measured.frequenciesHz);
    expect(largestDifference(measured.magnitude, magnitude)).toBeLessThan(0.01);
  });

  it("keeps a stereo file's rate and channels", async () => {
    const channels = [testSignal("click", 22_050).channels[0]!, new Float32Array(22_050)];
    const file = encodeWav({ sampleRateHz: 22_050, channels }, "pcm24");
    const reply = await service.app.inject({
      method: "POST",
      url: "/api/preview",
      ...withFile({ build: guard }, file),
    });
    expect(reply.statusCode).toBe(200);
    const sound = decodeWav(reply.rawPayload);
    expect([sound.sampleRateHz, sound.channels.length]).toEqual([22_050, 2]);
  });

  it("undoes a recording's own circuit and tells what it could not", async () => {
    const file = encodeWav(testSignal("noise", 48_000), "float32");
    const request = {
      build: guard,
      encoding: "float32",
      settings: { lever: 5 },
      recordedWith: { build: guard, settings: { lever: 5, tone: 0 } },
    };
    const reply = await service.app.inject({ method: "POST", url: "/api/preview", ...withFile(request, file) });
    expect(reply.headers["presolder-undo-limits"]).toMatch(/^boost at most 30 dB: \d+-\d+ Hz short by up to [\d.]+ dB/);
    expect(reply.headers["presolder-undo-unknown"]).toContain("cannot be known from a recording");
  });

  it("gives the same bytes for the same request", async () => {
    const [first, second] = [
      await post("/api/preview", { signal: "pluck" }),
      await post("/api/preview", { signal: "pluck" }),
    ];
    expect(first.rawPayload.equals(second.rawPayload)).toBe(true);
  });
});

describe.each(["pcm16", "pcm24", "float32"] as const)("a preview in %s", (encoding) => {
  const wanted = { pcm16: "pcm_s16le", pcm24: "pcm_s24le", float32: "pcm_f32le" }[encoding];
  const preview = async () => (await post("/api/preview", { signal: "click", rate: 44_100, encoding })).rawPayload;

  describeWith("ffprobe", "opened by ffprobe", () => {
    it("has the right format, rate and length", async () => {
      const bytes = await preview();
      const run = onDisk(bytes, (file) =>
        spawnSync(
          "ffprobe",
          ["-v", "error", "-show_entries", "stream=codec_name,sample_rate,channels,duration_ts", "-of", "json", file],
          { encoding: "utf8" },
        ),
      );
      const [stream] = JSON.parse(run.stdout).streams;
      expect(stream).toMatchObject({ codec_name: wanted, sample_rate: "44100", channels: 1 });
      expect(stream.duration_ts).toBe(decodeWav(bytes).channels[0]!.length);
    });
  });

  describeWith("sox", "opened by sox", () => {
    it("has the right rate and length", async () => {
      const bytes = await preview();
      const run = onDisk(bytes, (file) => spawnSync("soxi", [file], { encoding: "utf8" }));
      expect(run.status).toBe(0);
      expect(run.stdout).toContain("44100");
      expect(run.stdout).toContain(`${decodeWav(bytes).channels[0]!.length} samples`);
    });
  });
});

describe("GET /api/preview.wav", () => {
  const address = async (query: string) => {
    const { code } = (await post("/api/link", {})).json();
    return `/api/preview.wav?build=${code}&signal=click&${query}`;
  };

  it("is the same WAV as the POST call gives", async () => {
    const reply = await service.app.inject({
      url: await address("lever=2&tone=7&volume=9&encoding=float32&hum=60&level=matched"),
    });
    const same = await post("/api/preview", {
      settings: { lever: 2, tone: 7, volume: 9 },
      signal: "click",
      encoding: "float32",
      hum: 60,
      level: "matched",
    });
    expect(reply.statusCode).toBe(200);
    expect(reply.rawPayload.equals(same.rawPayload)).toBe(true);
  });

  it("has a tag by which a cache is told that nothing changed", async () => {
    const url = await address("lever=2");
    const first = await service.app.inject({ url });
    expect(first.headers["cache-control"]).toBe("public, max-age=3600");
    const again = await service.app.inject({ url, headers: { "if-none-match": `"other", W/${first.headers.etag}` } });
    expect(again.statusCode).toBe(304);
    expect(again.rawPayload).toHaveLength(0);
    expect(again.headers.etag).toBe(first.headers.etag);
    const other = await service.app.inject({ url: await address("lever=3") });
    expect(other.headers.etag).not.toBe(first.headers.etag);
  });

  it.each([
    ["bytes=0-99", 206, [0, 100]],
    ["bytes=1000-", 206, [1000, undefined]],
    ["bytes=-50", 206, [-50, undefined]],
    ["bytes=5-4", 200, [0, undefined]],
    ["bytes=0-1,5-6", 200, [0, undefined]],
    ["seconds=0-1", 200, [0, undefined]],
  ] as const)("answers Range: %s with %d", async (range, status, [from, to]) => {
    const url = await address("lever=1");
    const whole = (await service.app.inject({ url })).rawPayload;
    const part = await service.app.inject({ url, headers: { range } });
    expect(part.statusCode).toBe(status);
    expect(part.rawPayload.equals(whole.subarray(from === -50 ? whole.length - 50 : from, to))).toBe(true);
    if (status === 206) expect(part.headers["content-range"]).toMatch(new RegExp(`^bytes \\d+-\\d+/${whole.length}$`));
  });

  it("answers 416 to a range outside, and the whole where If-Range names another version", async () => {
    const url = await address("lever=1");
    const outside = await service.app.inject({ url, headers: { range: "bytes=99999999-" } });
    expect(outside.statusCode).toBe(416);
    expect(outside.json()).toMatchObject({ status: 416, title: "Range Not Satisfiable" });
    expect(outside.headers["content-range"]).toMatch(/^bytes \*\/\d+$/);
    const other = await service.app.inject({ url, headers: { range: "bytes=0-9", "if-range": '"other"' } });
    expect(other.statusCode).toBe(200);
  });

  it.each([
    ["levr=2", "query.levr"],
    ["lever=9", "query.lever"],
    ["lever=1&lever=2", "lever"],
    ["rate=fast", "rate"],
    ["build=2abc", "build"],
  ])("refuses %s by name", async (query, path) => {
    const url = query.startsWith("build") ? `/api/preview.wav?${query}` : await address(query);
    const reply = await service.app.inject({ url });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors.map((fault: { path: string }) => fault.path)).toContain(path);
    expect(reply.headers["cache-control"]).toBe("no-store");
    expect(reply.headers.etag).toBeUndefined();
  });
});

describe("GET /api/impulse.wav", () => {
  const codeOf = async () => (await post("/api/link", {})).json().code as string;

  it("is a float32 WAV that holds the curve", async () => {
    const reply = await service.app.inject({
      url: `/api/impulse.wav?build=${await codeOf()}&lever=4&tone=3&rate=44100`,
    });
    const { sampleRateHz, channels } = decodeWav(reply.rawPayload);
    expect([sampleRateHz, reply.rawPayload.readUInt16LE(20)]).toEqual([44_100, 3]);
    const response = new Float32Array(2 ** 15);
    response.set(channels[0]!);
    const delay = Number(reply.headers["presolder-delay-samples"]);
    const { frequenciesHz, magnitude } = measuredTransfer(Float32Array.of(1), response, 44_100, delay);
    const curve = curveIn(build, settingsOf(build, { lever: 4, tone: 3 }), frequenciesHz);
    expect(largestDifference(magnitude, curve.magnitude)).toBeLessThan(0.05);
  });

  it("takes one coil, or a second build with settings of its own", async () => {
    const code = await codeOf();
    const one = await service.app.inject({ url: `/api/impulse.wav?build=${code}&lever=4&coil=neck.coil` });
    const ratio = await service.app.inject({ url: `/api/impulse.wav?build=${code}&lever=4&over=${code}&over.lever=1` });
    expect([one.statusCode, ratio.statusCode]).toEqual([200, 200]);
    expect(ratio.headers["presolder-undo-limits"]).toContain("boost at most 30 dB");
  });

  it.each([
    ["coil=none", "coil"],
    ["over.lever=1", "over"],
    ["over=1x", "over"],
  ])("refuses %s by name", async (query, path) => {
    const reply = await service.app.inject({ url: `/api/impulse.wav?build=${await codeOf()}&${query}` });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors[0].path).toBe(path);
  });
});

describe("POST /api/previews", () => {
  const archive = async (payload: object) => {
    const reply = await post("/api/previews", payload);
    expect(reply.statusCode).toBe(200);
    expect(reply.headers).toMatchObject({
      "content-type": "application/zip",
      "content-disposition": 'attachment; filename="previews.zip"',
    });
    return unzipSync(reply.rawPayload);
  };

  it("is a ZIP with a WAV for every setting of the default sweep, curves and manifest", async () => {
    const files = await archive({ signal: "click" });
    const names = Object.keys(files);
    expect(names.slice(0, 4)).toEqual([
      "manifest.json",
      "response.csv",
      "response.json",
      "01-position-1-tone-0-volume-10.wav",
    ]);
    expect(names).toHaveLength(58);
    const manifest = JSON.parse(Buffer.from(files["manifest.json"]!).toString());
    expect(manifest.previews).toHaveLength(55);
    for (const { file } of manifest.previews) expect(decodeWav(files[file]!).sampleRateHz).toBe(48_000);
  });

  it("holds the very WAVs that single previews give at the true level, with the curves the response route gives", async () => {
    const sweep = { lever: [2], tone: [0, 10] };
    const files = await archive({ signal: "click", sweep });
    const single = await post("/api/preview", { signal: "click", settings: { lever: 2, tone: 10 } });
    expect(single.rawPayload.equals(Buffer.from(files["02-position-2-tone-10-volume-10.wav"]!))).toBe(true);
    const curves = (await post("/api/response", { sweep })).json();
    expect(JSON.parse(Buffer.from(files["response.json"]!).toString())).toEqual(curves);
    const rows = Buffer.from(files["response.csv"]!).toString().trimEnd().split("\r\n");
    expect(rows[0]).toBe('frequency (Hz),"position 2, tone 0, volume 10 (dB)","position 2, tone 10, volume 10 (dB)"');
    expect(rows).toHaveLength(513);
    const [frequency, first] = rows[1]!.split(",").map(Number);
    expect([frequency, first]).toEqual([20, expect.closeTo(curves.curves[0].magnitude[0], 3)]);
  });

  it("tells the level of each preview as it can be measured in the file", async () => {
    const files = await archive({ signal: "pluck", level: "matched", sweep: { lever: [1, 2, 3] } });
    const manifest = JSON.parse(Buffer.from(files["manifest.json"]!).toString());
    expect(manifest).toMatchObject({ signal: "pluck", level: "matched", placesAssumed: ["neck", "middle", "bridge"] });
    for (const { file, lufs, gainDb } of manifest.previews) {
      expect(lufs).toBeCloseTo(integratedLoudness(decodeWav(files[file]!))!, 1);
      expect(gainDb).not.toBe(0);
    }
  });

  it("renders a file of one's own in every setting, its circuit undone", async () => {
    const file = encodeWav(testSignal("click", 44_100), "pcm16");
    const request = {
      build: guard,
      sweep: { lever: [1, 5] },
      recordedWith: { build: guard, settings: { tone: 0, lever: 5 } },
    };
    const reply = await service.app.inject({ method: "POST", url: "/api/previews", ...withFile(request, file) });
    const files = unzipSync(reply.rawPayload);
    const manifest = JSON.parse(Buffer.from(files["manifest.json"]!).toString());
    expect(manifest.undo.unknown).toContain("cannot be known");
    expect(manifest.previews[0].limits[0].shortByDb).toBeGreaterThan(0);
    expect(decodeWav(files[manifest.previews[1].file]!).sampleRateHz).toBe(44_100);
  });

  it.each([
    ["position 1, tone1.s up", "position-1-tone1-s-up"],
    ["../../etc/passwd", "etc-passwd"],
    ["con:<>|?*", "con"],
    ["", "preview"],
  ])("names a file for %j so that every system takes it", async (label, words) => {
    const { fileName } = await import("../../../src/server/archive/preview-archive.ts");
    expect(fileName(0, label, 5)).toBe(`01-${words}.wav`);
  });
});

it("GET /api/signals lists names that previews take", async () => {
  const { signals, default: first } = (await service.app.inject({ url: "/api/signals" })).json();
  expect(signals[0].name).toBe(first);
  for (const { name, title, description } of signals) {
    expect(`${title} ${description}`.length).toBeGreaterThan(10);
    const reply = await post("/api/preview", { signal: name, rate: 8000 });
    expect(reply.statusCode).toBe(200);
  }
});
