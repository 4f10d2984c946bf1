import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { decodeWav } from "../../../src/audio/wav-decode.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { centroidHz } from "../../strings/centroid.ts";
import { useService, withFile } from "../service.ts";

const service = useService();
const guard = threeSingles();
const RATE = 16_000;

const post = (url: string, payload: object) =>
  service.app.inject({ method: "POST", url, payload: { build: guard, ...payload } });

async function wavOf(payload: object): Promise<Uint8Array> {
  const reply = await post("/api/preview", { signal: "pluck", rate: RATE, ...payload });
  expect(reply.statusCode).toBe(200);
  return reply.rawPayload;
}

const brightness = (wav: Uint8Array) => centroidHz(decodeWav(wav).channels[0]!, RATE);

describe("how a phrase is played", () => {
  it("is heard: brighter at the bridge, darker at the neck; dull on old strings, bright on new ones", async () => {
    const [usual, bright, dark, fresh, old] = await Promise.all(
      [{}, { hand: "bright" }, { hand: "dark" }, { strings: "new" }, { strings: "old" }].map(wavOf),
    );
    expect(brightness(bright!)).toBeGreaterThan(brightness(usual!));
    expect(brightness(usual!)).toBeGreaterThan(brightness(dark!));
    expect(brightness(fresh!)).toBeGreaterThan(brightness(usual!));
    expect(brightness(usual!)).toBeGreaterThan(brightness(old!));
  });

  it("is the usual where nobody says, to the last bit, and the same every time", async () => {
    const plain = await wavOf({});
    expect(await wavOf({ hand: "usual", strings: "used" })).toEqual(plain);
    expect(await wavOf({ hand: "bright" })).not.toEqual(plain);
    expect(await wavOf({ hand: "bright" })).toEqual(await wavOf({ hand: "bright" }));
    expect(await wavOf({})).toEqual(plain);
  });

  it("may stand in an address, each with a tag of its own", async () => {
    const { code } = (await post("/api/link", {})).json();
    const at = (query: string) =>
      service.app.inject({ url: `/api/preview.wav?build=${code}&signal=pluck&rate=${RATE}${query}` });
    const [plain, dark, old] = [await at(""), await at("&hand=dark"), await at("&strings=old")];
    expect(dark.rawPayload).toEqual(Buffer.from(await wavOf({ hand: "dark" })));
    expect(old.rawPayload).toEqual(Buffer.from(await wavOf({ strings: "old" })));
    expect(new Set([plain, dark, old].map(({ headers }) => headers.etag)).size).toBe(3);
  });

  it("stands in a set's manifest, the usual too", async () => {
    const manifestOf = async (payload: object) => {
      const sweep = { tone: [10] };
      const reply = await post("/api/previews", { signal: "pluck", rate: RATE, sweep, ...payload });
      return JSON.parse(Buffer.from(unzipSync(reply.rawPayload)["manifest.json"]!).toString());
    };
    expect(await manifestOf({ hand: "bright", strings: "old" })).toMatchObject({ hand: "bright", strings: "old" });
    expect(await manifestOf({})).toMatchObject({ hand: "usual", strings: "used" });
    const noise = await manifestOf({ signal: "noise" });
    expect([noise.hand, noise.strings]).toEqual([undefined, undefined]);
  });

  it("weighs a comparison and a table", async () => {
    const compared = async (payload: object) => {
      const settings = [
        { lever: 4, tone: 10 },
        { lever: 4, tone: 0 },
      ];
      const reply = await service.app.inject({
        method: "POST",
        url: "/api/compare",
        payload: { builds: [guard], settings, signal: "pluck", tolerance: false, ...payload },
      });
      return reply.json().rows[0].loudnessDifference;
    };
    const sharp = await compared({ hand: "bright", strings: "new" });
    const dull = await compared({ hand: "dark", strings: "old" });
    expect(Math.abs(sharp - dull)).toBeGreaterThan(0.5);
    const tables = await Promise.all(
      [{ hand: "bright" }, { hand: "dark" }].map(async ({ hand }) => {
        const asked = { signal: "pluck", hand, settings: { lever: 4 }, sweep: { tone: [0, 10] } };
        const [shut, open] = (await post("/api/table", asked)).json().rows;
        return open.loudness - shut.loudness;
      }),
    );
    expect(tables[0]).not.toBeCloseTo(tables[1]!, 1);
  });

  it.each([
    [{ hand: "brigth" }, "hand", /"usual", "bright", "dark".*did you mean "bright"/],
    [{ strings: "rusty" }, "strings", /rusty is none of "new", "used", "old"/],
    [{ signal: "noise", hand: "dark" }, "hand", /"dark" given beside "noise"; only a phrase/],
  ])("is refused where it cannot be: %j", async (payload, field, message) => {
    const reply = await post("/api/preview", { signal: "pluck", ...payload });
    expect(reply.statusCode).toBe(400);
    expect(JSON.stringify(reply.json())).toMatch(new RegExp(field));
    expect(reply.json().detail ?? JSON.stringify(reply.json())).toMatch(message);
  });

  it("is refused beside a file of one's own and a weighting without a signal", async () => {
    const file = await wavOf({});
    const replies = [
      await service.app.inject({
        method: "POST",
        url: "/api/preview",
        ...withFile({ build: guard, strings: "old" }, file),
      }),
      await post("/api/table", { hand: "dark" }),
    ];
    for (const reply of replies) {
      expect(reply.statusCode).toBe(400);
      expect(JSON.stringify(reply.json())).toContain("given beside no phrase");
    }
  });
});

it("GET /api/signals tells seconds, hands and strings", async () => {
  const { signals, hands, strings } = (await service.app.inject({ url: "/api/signals" })).json();
  const phrases = signals.filter(({ kind }: { kind: string }) => kind === "phrase");
  const seconds = phrases.reduce((sum: number, each: { seconds: number }) => sum + each.seconds, 0);
  expect(seconds).toBeGreaterThan(60);
  expect(hands.map(({ name }: { name: string }) => name)).toEqual(["usual", "bright", "dark"]);
  expect(strings.map(({ name }: { name: string }) => name)).toEqual(["new", "used", "old"]);
});
