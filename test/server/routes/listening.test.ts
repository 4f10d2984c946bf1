import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { decodeWav } from "../../../src/audio/wav-decode.ts";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { SPEAKER } from "../../../src/listening/speaker/figures.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { multipart, useService } from "../service.ts";

const service = useService();
const guard = threeSingles({ rest: { title: "Guard L" } });

const post = (url: string, payload: object) =>
  service.app.inject({ method: "POST", url, payload: { build: guard, signal: "click", ...payload } });

const cabinet = encodeWav(
  { sampleRateHz: 44_100, channels: [Float32Array.from({ length: 900 }, (_, n) => Math.exp(-n / 60) * Math.cos(n))] },
  "pcm24",
);

function withCabinet(request: object, file: Uint8Array = cabinet) {
  return multipart([
    { name: "request", content: JSON.stringify({ build: guard, ...request }) },
    { name: "cabinet", content: file, filename: "cabinet.wav" },
  ]);
}

const postForm = (form: ReturnType<typeof multipart>) =>
  service.app.inject({ method: "POST", url: "/api/preview", ...form });

describe("a preview heard through an amplifier", () => {
  it("is named in headers and file name, and so is the jack without one", async () => {
    const clean = await post("/api/preview", { listening: { chain: "clean", drive: 3.5 } });
    expect(clean.headers).toMatchObject({
      "presolder-listening": "clean amplifier and 12-inch speaker, drive 3.5",
      "content-disposition": 'inline; filename="preview-clean-drive-3-5.wav"',
      "presolder-delay-samples": "178",
    });
    const none = await post("/api/preview", {});
    expect(none.headers).toMatchObject({
      "presolder-listening": "as it comes out of the jack",
      "content-disposition": 'inline; filename="preview.wav"',
    });
    expect(clean.rawPayload.equals(none.rawPayload)).toBe(false);
  });

  it("is the jack's own sound where the chain is none, whatever stands beside", async () => {
    const none = await post("/api/preview", { listening: { chain: "none", drive: 8 } });
    expect(none.rawPayload.equals((await post("/api/preview", {})).rawPayload)).toBe(true);
  });

  it("comes by an address as by a request", async () => {
    const { code } = (await service.app.inject({ method: "POST", url: "/api/link", payload: { build: guard } })).json();
    const address = `/api/preview.wav?build=${code}&signal=click&lever=2&listening.chain=clean&listening.drive=2.5`;
    const got = await service.app.inject({ url: address });
    const sent = await post("/api/preview", { settings: { lever: 2 }, listening: { chain: "clean", drive: 2.5 } });
    expect(got.statusCode).toBe(200);
    expect(got.rawPayload.equals(sent.rawPayload)).toBe(true);
    expect(got.headers["presolder-listening"]).toBe(sent.headers["presolder-listening"]);
  });

  it("takes a cabinet beside a built-in signal, and beside a file", async () => {
    const own = await postForm(withCabinet({ signal: "click", listening: { chain: "clean" } }));
    expect(own.statusCode).toBe(200);
    expect(own.headers["presolder-listening"]).toBe("clean amplifier and own cabinet, drive 0");
    const nothing = await postForm(withCabinet({ signal: "click", listening: { chain: "clean", cabinet: null } }));
    expect(nothing.rawPayload.equals(own.rawPayload)).toBe(true);
    const both = withCabinet({ listening: { chain: "clean", cabinet: "own" } });
    const form = multipart([
      { name: "request", content: JSON.stringify({ build: guard, listening: { chain: "clean", cabinet: "own" } }) },
      {
        name: "signal",
        content: encodeWav({ sampleRateHz: 22_050, channels: [new Float32Array(900).fill(0.1)] }, "pcm16"),
        filename: "take.wav",
      },
      { name: "cabinet", content: cabinet, filename: "cabinet.wav" },
    ]);
    expect((await postForm(both)).statusCode).toBe(200);
    const reply = await postForm(form);
    expect(decodeWav(reply.rawPayload).sampleRateHz).toBe(22_050);
  });

  it.each([
    [{ listening: { chain: "loud" } }, "listening.chain"],
    [{ listening: { chain: "clean", drive: 11 } }, "listening.drive"],
    [{ listening: { chain: "clean", drive: "much" } }, "listening.drive"],
    [{ listening: { chain: "clean", cabinet: "mine" } }, "listening.cabinet"],
    [{ listening: { chain: "clean", cabinet: "own" } }, "cabinet"],
    [{ listening: { chain: "clean", reverb: 1 } }, "listening.reverb"],
  ])("is refused by name: %j", async (request, path) => {
    const reply = await post("/api/preview", request);
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors[0].path).toBe(path);
  });

  it.each([
    ["a file that is no WAV", { chain: "clean" }, Uint8Array.of(1, 2, 3), "cabinet", 400],
    ["a cabinet that would not be heard", { chain: "none" }, cabinet, "cabinet", 400],
    ["a cabinet beside the stated speaker", { chain: "clean", cabinet: "stated" }, cabinet, "listening.cabinet", 400],
    [
      "a response of over a second",
      { chain: "clean" },
      encodeWav({ sampleRateHz: 8000, channels: [new Float32Array(9000).fill(0.1)] }, "pcm16"),
      "cabinet",
      413,
    ],
  ] as const)("refuses %s", async (_, listening, file, path, status) => {
    const reply = await postForm(withCabinet({ signal: "click", listening }, file));
    expect(reply.statusCode).toBe(status);
    expect(reply.json().errors[0].path).toBe(path);
  });
});

describe("a set heard through an amplifier", () => {
  it("names the chain in its manifest, with every figure, and in its files", async () => {
    const reply = await post("/api/previews", {
      sweep: { lever: [1, 2] },
      listening: { chain: "clean", drive: 4 },
    });
    expect(reply.headers["content-disposition"]).toBe('attachment; filename="previews-clean-drive-4.zip"');
    expect(reply.headers["presolder-listening"]).toBe("clean amplifier and 12-inch speaker, drive 4");
    const files = unzipSync(reply.rawPayload);
    const manifest = JSON.parse(Buffer.from(files["manifest.json"]!).toString());
    expect(manifest.listening).toMatchObject({ chain: "clean", drive: 4, cabinet: "stated", speaker: SPEAKER });
    for (const { file, settings } of manifest.previews)
      expect(file).toMatch(new RegExp(`^0${settings.lever}-position-${settings.lever}-.*-clean-drive-4\\.wav$`));
    for (const { file } of manifest.previews) expect(files[file]).toBeDefined();
    // The curves are the guard's alone.
    const plain = unzipSync((await post("/api/previews", { sweep: { lever: [1, 2] } })).rawPayload);
    expect(Buffer.from(files["response.csv"]!).equals(Buffer.from(plain["response.csv"]!))).toBe(true);
    expect(JSON.parse(Buffer.from(plain["manifest.json"]!).toString()).listening).toEqual({ chain: "none" });
  });

  it("asks for no more sound than a driven amplifier gives in a while", async () => {
    const sweep = { lever: [1, 2, 3, 4, 5], tone1: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], tone2: [0, 3, 5, 7, 10] };
    const reply = await post("/api/previews", { signal: "strum", sweep, listening: { chain: "clean", drive: 4 } });
    expect(reply.statusCode).toBe(413);
    expect(reply.json().errors[0]).toMatchObject({ path: "sweep" });
    expect(reply.json().errors[0].message).toContain("1800 s through a driven amplifier");
  });
});

describe("the figures of the chain", () => {
  it("stand in the answer that lists the signals, with what they rest on", async () => {
    const { listening } = (await service.app.inject({ url: "/api/signals" })).json();
    expect(listening.speaker).toMatchObject(SPEAKER);
    expect(listening.speaker.basis).toContain("common practice");
    expect(listening.chains.map(({ name }: { name: string }) => name)).toEqual(["none", "clean"]);
  });

  it("is nothing that a curve may be asked through", async () => {
    const payload = { build: guard, listening: { chain: "clean" } };
    const reply = await service.app.inject({ method: "POST", url: "/api/response", payload });
    expect(reply.statusCode).toBe(400);
  });
});
