import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildApp } from "../../../src/server/app.ts";
import { decodeLink } from "../../../src/server/links/link-code.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { PLAN } from "../plan.ts";

let app: App;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

const post = (payload: object) => app.inject({ method: "POST", url: "/api/passport", payload });

describe("POST /api/passport", () => {
  it("answers what the guard is, with a link that carries the guard itself", async () => {
    const answer = (await post({ build: PLAN, heights: { bridge: { bass: "2.4mm", treble: 0.002 } } })).json();
    expect(answer.positions).toHaveLength(5);
    expect(answer.heights).toMatchObject([{ pickup: "bridge", bass: 0.0024, treble: 0.002 }]);
    expect(decodeLink(answer.link.split("/b/")[1]).build).toEqual(PLAN);
  });

  it.each([
    [{ date: "1st of March" }, "date"],
    [{ address: "javascript:alert(1)" }, "address"],
    [{ heights: { bridge: { bass: "2.4 elephants", treble: "2mm" } } }, "heights.bridge.bass"],
    [{ drawing: { box: [0, 0, 1, 1], shapes: [{ kind: "line", d: "M0 0 <script>" }] } }, "drawing.shapes.0.d"],
    [{ drawing: { box: [0, 0, 0, 1], shapes: [] } }, "drawing.box.2"],
    [{ drawing: { box: [0, 0, 1e-300, 1], shapes: [] } }, "drawing.box.2"],
    [{ drawing: { box: [0, 0, 1, 1], shapes: [{ kind: "line", d: "M0 0L1e308-1" }] } }, "drawing.shapes.0.d"],
    [
      { drawing: { box: [0, 0, 1, 1], shapes: [{ kind: "line", d: "M0 0A1e999.5 1 0 0 0 1 1" }] } },
      "drawing.shapes.0.d",
    ],
  ])("refuses %j by its field", async (wrong, path) => {
    const answer = await post({ build: PLAN, ...wrong });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().errors[0].path).toBe(path);
  });

  it("draws whatever path is well-formed by its letters, dashed or not, and refuses none of it by failing", async () => {
    const odd = [
      "M",
      "M0",
      "L5 5",
      "A1 1 0 0 0",
      "M0 0A0 0 0 1 1 0 0",
      "M1e9 0L-1e9 0",
      "Z",
      "M0 0Q1",
      "T1 1",
      "..--",
      "M0 0a1e9 1e-9 3 1 1 1e9 1e9",
    ];
    const dashed = [
      [0, 5],
      [5, 0],
      [0, 0, 0, 5],
    ].map((dash) => ({ kind: "line", d: "M0 0L5 5", stroke: "#000000", dash }));
    const shapes = [...odd.map((d) => ({ kind: "line", d, stroke: "#000000" })), ...dashed];
    const answer = await post({ build: PLAN, format: "pdf", drawing: { box: [0, 0, 10, 10], shapes } });
    expect(answer.statusCode).toBe(200);
    expect(answer.rawPayload.toString("latin1", 0, 5)).toBe("%PDF-");
    expect(answer.rawPayload.toString("latin1")).not.toMatch(/NaN|Infinity/);
  });
});
