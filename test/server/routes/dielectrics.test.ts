import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildApp } from "../../../src/server/app.ts";
import { onePickup } from "../../fixtures/circuits.ts";

let app: Awaited<ReturnType<typeof buildApp>>;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

const post = (url: string, payload: object) => app.inject({ method: "POST", url, payload });

describe("POST /api/dielectrics", () => {
  test("answers in a sentence and with figures of every dielectric, weighed by a signal where one is named", async () => {
    const [flat, strummed] = await Promise.all(
      [{}, { signal: "pluck" }].map((more) => post("/api/dielectrics", { build: onePickup(), ...more })),
    );
    const { answer, caps, weighting } = flat!.json();
    expect(weighting).toBe("flat");
    expect(answer).toMatch(/^(No|Hardly|Yes)/);
    expect(caps).toHaveLength(1);
    expect(caps[0]).toMatchObject({ cap: "cap", capacitance: 22e-9, settings: 11 });
    expect(caps[0].rows.map(({ dielectric }: { dielectric: string }) => dielectric)).toContain("film-pet");
    expect(strummed!.json().weighting).toBe("pluck");
  });

  test("refuses a cap that is none, by the field", async () => {
    const none = await post("/api/dielectrics", { build: onePickup(), caps: ["tone"] });
    expect(none.statusCode).toBe(400);
    expect(none.json().errors).toEqual([{ path: "caps.0", message: 'there is no cap "tone"; known: "cap"' }]);
  });
});

describe("POST /api/tolerance", () => {
  test("draws caps with what their temperature allows, and refuses a range the wrong way round", async () => {
    const cap = { kind: "cap", capacitance: "22n", dielectric: "ceramic-z5u" };
    const ask = (temperature: number[]) =>
      post("/api/tolerance", { build: onePickup({ parts: { cap } }), points: 32, temperature });
    const cold = (await ask([10, 10])).json();
    expect(cold.spread.find(({ part }: { part: string }) => part === "cap")).toMatchObject({
      tolerance: 0.2,
      drift: [-0.56, 0.22],
      isDefault: true,
    });
    const wrong = await ask([35, 10]);
    expect(wrong.statusCode).toBe(400);
    expect(wrong.json().errors[0]).toMatchObject({ path: "temperature" });
  });
});
