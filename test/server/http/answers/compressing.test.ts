import { gunzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { threeSingles } from "../../../fixtures/circuits.ts";
import { useService } from "../../service.ts";

describe("a text answer", () => {
  const service = useService();
  const payload = { build: threeSingles() };
  const curves = (accepts?: string) =>
    service.app.inject({
      method: "POST",
      url: "/api/response",
      payload,
      headers: accepts === undefined ? {} : { "accept-encoding": accepts },
    });

  test("goes compressed to whoever takes that, and is the same", async () => {
    const plain = await curves();
    const packed = await curves("deflate, gzip;q=0.8, br");
    expect(packed.headers).toMatchObject({ "content-encoding": "gzip", vary: "accept-encoding" });
    expect(Number(packed.headers["content-length"])).toBe(packed.rawPayload.length);
    expect(packed.rawPayload.length).toBeLessThan(plain.rawPayload.length * 0.6);
    expect(gunzipSync(packed.rawPayload).equals(plain.rawPayload)).toBe(true);
  });

  test.each([undefined, "", "identity", "gzip;q=0", "br"])("goes as it is to whoever says %o", async (accepts) => {
    const { headers, json } = await curves(accepts);
    expect([headers["content-encoding"], headers.vary]).toEqual([undefined, "accept-encoding"]);
    expect(json()).toHaveProperty("frequencies");
  });

  test("of several sweeps in one goes as it is, so that it keeps nobody waiting", async () => {
    const sweep = {
      lever: [1, 2, 3, 4, 5],
      tone: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
      volume: [1, 2, 3, 4, 5, 6, 7, 8, 9],
    };
    const { headers, rawPayload } = await service.app.inject({
      method: "POST",
      url: "/api/response",
      payload: { ...payload, sweep },
      headers: { "accept-encoding": "gzip" },
    });
    expect(rawPayload.length).toBeGreaterThan(1 << 20);
    expect(headers["content-encoding"]).toBeUndefined();
  });

  test("has one tag in both forms, by which neither is sent again", async () => {
    const ask = (headers: Record<string, string>) => service.app.inject({ url: "/api/catalogue", headers });
    const packed = await ask({ "accept-encoding": "gzip" });
    const tag = String(packed.headers.etag);
    expect(tag).toMatch(/^W\/"/);
    expect((await ask({})).headers.etag).toBe(tag.slice(2));
    for (const accepts of ["gzip", "identity"]) {
      const again = await ask({ "accept-encoding": accepts, "if-none-match": tag });
      expect([again.statusCode, again.rawPayload.length]).toEqual([304, 0]);
    }
  });

  test("of sound, and one of a few bytes, go as they are", async () => {
    const headers = { "accept-encoding": "gzip" };
    const sound = await service.app.inject({
      method: "POST",
      url: "/api/preview",
      payload: { ...payload, signal: "click" },
      headers,
    });
    const health = await service.app.inject({ url: "/healthz", headers });
    for (const { headers: told } of [sound, health]) expect(told["content-encoding"]).toBeUndefined();
  });
});
