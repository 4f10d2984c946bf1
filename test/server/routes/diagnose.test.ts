import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { diagnoseAnswerSchema } from "../../../src/contract/diagnose.ts";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";

const between = ["jack.tip", "jack.sleeve"];

describe("POST /api/diagnose", () => {
  let app: App;
  beforeAll(async () => {
    app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
  });
  afterAll(() => app.close());

  const post = (payload: object) => app.inject({ method: "POST", url: "/api/diagnose", payload });

  it("finds nothing wrong where the readings are as they should be", async () => {
    const readings = [
      { between, ohms: 5850 },
      { between, settings: { volume: 0 }, ohms: 0.4 },
      { between, sweep: "volume", ohms: "64k" },
    ];
    const response = await post({ build: onePickup(), readings });
    expect(response.statusCode).toBe(200);
    const { explanations } = response.json();
    expect(explanations[0].faults).toEqual([{ kind: "none", lugs: [] }]);
    expect(explanations[0].message).toBe("Nothing is wrong: this is what it should read.");
    expect(explanations[0].fit).toBeGreaterThan(0.9);
  });

  it("names an open neck lead from readings in five positions, with what reads the same and what to measure next", async () => {
    const ohms = [6620, 3185, 6145, 6145, 250e3];
    const readings = ohms.map((each, index) => ({ between, settings: { lever: index + 1 }, ohms: each }));
    const answer = (await post({ build: threeSingles(), readings })).json();
    const { explanations, nextMeasurement, remainder, summary } = answer;
    const named = [explanations[0], ...explanations[0].sameAs].map(
      ({ faults }) => `${faults[0].kind} ${faults[0].lugs}`,
    );
    expect(named).toContain("wire-open neck.hot,lever.A3");
    expect(named).toContain("coil-open neck.hot,neck.ground");
    expect(explanations[0].probability).toBeGreaterThan(0.75);
    // What is left is for a second fault that does not show, and for what was not weighed.
    expect(explanations[0].probability + remainder.probability).toBeGreaterThan(0.99);
    expect(summary).toMatch(
      /^Most likely \(\d\d %\) .* is open.* where a sound guard shows 5\.76 kΩ\. Next, measure from /,
    );
    expect(explanations[0].fit).toBeGreaterThan(0.5);
    expect(nextMeasurement.outcomes.length).toBeGreaterThan(1);
  });

  it("weighs what was heard, and answers what the documented schema says", async () => {
    const symptoms = [{ code: "tone-no-effect", settings: { lever: 5 }, control: "tone1" }];
    const readings = [6620, 3185, 6145, 2975, 5765].map((ohms, index) => ({
      between,
      settings: { lever: index + 1 },
      ohms,
    }));
    const response = await post({ build: threeSingles(), readings, symptoms });
    expect(response.statusCode).toBe(200);
    const answer = diagnoseAnswerSchema.parse(response.json());
    const [first] = answer.explanations;
    const named = [first!, ...first!.sameAs].map(({ faults }) => `${faults[0]!.kind} ${faults[0]!.lugs}`);
    expect(named).toContain("wire-open lever.B3,tone1.2");
  });

  it("takes a reading of the bench back with other ohms, and says that its range is no longer the meter's", async () => {
    const bench = await app.inject({ method: "POST", url: "/api/bench", payload: { build: onePickup() } });
    const [jack] = bench.json().readings;
    const answers = await Promise.all(
      [{ ...jack, ohms: 2930 }, { ...jack, ohms: null }, jack].map((reading) =>
        post({ build: onePickup(), readings: [reading] }),
      ),
    );
    const [other, open, same] = answers.map((response) => diagnoseAnswerSchema.parse(response.json()));
    expect(other!.explanations[0]!.faults[0]!.kind).toBe("coil-value");
    expect(other!.notes).toEqual([expect.stringMatching(/^Jack: 2930 is not between low .* 1 %\.$/)]);
    expect(open!.notes).toEqual([expect.stringMatching(/^Jack: open is not between/)]);
    expect(same!.notes).toEqual([]);
    expect(same!.explanations[0]!.faults[0]!.kind).toBe("none");
  });

  it("takes a meter over its range as above the range's end, not as open", async () => {
    const kinds = async (reading: object) => {
      const response = await post({ build: onePickup(), readings: [{ between, ...reading }] });
      const { explanations } = diagnoseAnswerSchema.parse(response.json());
      return explanations
        .filter(({ probability }) => probability > 0)
        .flatMap(({ faults, sameAs }) => [faults, ...sameAs.map((each) => each.faults)])
        .map(([first]) => first!.kind);
    };
    // An open coil leaves the volume's track of 250 kΩ: above 20 kΩ, not above 2 MΩ, and not open.
    expect(await kinds({ above: "20k" })).toContain("coil-open");
    expect(await kinds({ above: "20k" })).not.toContain("none");
    expect(await kinds({ above: "2M" })).not.toContain("coil-open");
    expect(await kinds({ ohms: null })).not.toContain("coil-open");
    // The coil's 5.85 kΩ beside the track lies well above 2 kΩ.
    expect((await kinds({ above: "2k" }))[0]).toBe("none");
  });

  it("says that nothing is measured yet, and what to measure first", async () => {
    const answer = diagnoseAnswerSchema.parse((await post({ build: onePickup() })).json());
    expect(answer.explanations.map(({ faults }) => faults[0]!.kind)).toEqual(["nothing-measured"]);
    expect(answer.nextMeasurement).not.toBeNull();
  });

  it("documents a reading's ohms, low and high as a number, text with a unit, or null", async () => {
    const { paths } = (await app.inject({ url: "/api/openapi.json" })).json();
    const { schema } = paths["/api/diagnose"].post.requestBody.content["application/json"];
    for (const field of ["ohms", "low", "high"]) {
      const { anyOf, type } = schema.properties.readings.items.properties[field];
      const types = anyOf?.map((branch: { type: string }) => branch.type) ?? [type].flat();
      expect(types.sort(), field).toEqual(["null", "number", "string"]);
    }
  });

  it("suggests the nearest symptom for one that it does not know", async () => {
    const response = await post({ build: onePickup(), symptoms: [{ code: "thinn" }] });
    expect(response.statusCode).toBe(400);
    expect(response.json().errors[0]).toMatchObject({ path: "symptoms.0.code" });
    expect(response.json().errors[0].message).toContain('did you mean "thin"?');
  });

  it.each([
    [{ build: onePickup(), readings: [{ between: ["jack.tip", "x.y"], ohms: 1 }] }, "readings.0.between.1"],
    [{ build: onePickup(), readings: [{ between, ohms: -1 }] }, "readings.0.ohms"],
    [{ build: onePickup(), readings: [{ between }] }, "readings.0.ohms"],
    [{ build: onePickup(), readings: [{ between, ohms: 1, above: "2k" }] }, "readings.0.ohms"],
    [{ build: onePickup(), readings: [{ between, above: 0 }] }, "readings.0.above"],
    [{ build: onePickup(), readings: [{ between, ohms: 250, low: 300, high: 200 }] }, "readings.0.low"],
    [{ build: onePickup(), readings: [{ between, settings: { volume: 11 }, ohms: 1 }] }, "readings.0.settings.volume"],
  ])("refuses what cannot be read and names the field: %#", async (payload, path) => {
    const response = await post(payload);
    expect(response.statusCode).toBe(400);
    expect(response.json().errors[0].path).toBe(path);
  });
});
