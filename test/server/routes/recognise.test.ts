import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { expandBuild } from "../../../src/build-file/expand.ts";
import { recogniseAnswerSchema } from "../../../src/contract/recognise.ts";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { LEVER_PLAN } from "../../fixtures/plans.ts";

describe("POST /api/recognise", () => {
  let app: App;
  beforeAll(async () => {
    app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
  });
  afterAll(() => app.close());

  const post = (payload: object) => app.inject({ method: "POST", url: "/api/recognise", payload });
  const long = expandBuild({ presolder: 1, plan: LEVER_PLAN });

  it("answers the plan that a long form was expanded from", async () => {
    const response = await post({ build: long });
    expect(response.statusCode).toBe(200);
    const { options, ...rest } = response.json();
    expect(rest).toEqual({ plan: LEVER_PLAN, edits: [] });
    expect(options).toContainEqual(expect.objectContaining({ id: "layout", value: LEVER_PLAN.layout }));
  });

  it("answers a plan as it was written", async () => {
    const plan = { ...LEVER_PLAN, toneFeed: "before-volume", volume: { pot: "250k" } };
    expect((await post({ build: { presolder: 1, plan } })).json()).toMatchObject({ plan, edits: [] });
  });

  it("says what was done by hand, and answers what the documented schema says", async () => {
    const wires = [...long.wires.filter((wire) => !("from" in wire && wire.from === "claw")), ["claw", "jack.tip"]];
    const { plan, edits } = recogniseAnswerSchema.parse((await post({ build: { ...long, wires } })).json()) as {
      plan: object;
      edits: { text: string }[];
    };
    expect(plan).toEqual(LEVER_PLAN);
    expect(edits.map(({ text }) => text)).toEqual([
      "A wire of the plan is left out: spring claw — volume, case.",
      "A wire is laid by hand: spring claw — jack, tip.",
    ]);
    expect((await post({ build: threeSingles() })).json()).toMatchObject({ plan: { layout: "lever-5-two-tone" } });
  });

  it("says why where no plan comes near", async () => {
    const build = { ...long, parts: { ...long.parts, second: { kind: "switch", type: "toggle-3" } } };
    const response = await post({ build });
    expect(response.statusCode).toBe(200);
    expect(response.json()).toEqual({ plan: null, why: "It has two selectors, and no plan has more than one." });
  });

  it.each([
    [{}, "build"],
    [{ build: { ...long, wires: [["neck.nose", "jack.tip"]] } }, "build.wires.0.from"],
    [{ build: { presolder: 1, plan: { ...LEVER_PLAN, volume: "0" } } }, "build.plan.volume"],
    [{ build: long, hint: LEVER_PLAN }, "hint"],
  ])("refuses what cannot be read and names the field: %#", async (payload, path) => {
    const response = await post(payload);
    expect(response.statusCode).toBe(400);
    expect(response.json().errors[0].path).toBe(path);
  });

  it("documents the plan that it answers", async () => {
    const { paths } = (await app.inject({ url: "/api/openapi.json" })).json();
    const { schema } = paths["/api/recognise"].post.responses["200"].content["application/json"];
    expect(schema.anyOf[0].properties.plan.properties).toHaveProperty("layout");
    expect(schema.anyOf[0].properties.edits.items.oneOf ?? schema.anyOf[0].properties.edits.items.anyOf).toHaveLength(
      5,
    );
  });
});
