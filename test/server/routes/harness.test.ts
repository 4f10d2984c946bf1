import { describe, expect, it } from "vitest";
import { presetGuard, withoutPickups } from "../../fixtures/harness.ts";
import { useService } from "../service.ts";

const service = useService();
const build = withoutPickups(presetGuard("singles-neck-middle"));
const post = (url: string, payload: object) => service.app.inject({ method: "POST", url, payload });

describe("a harness without pickups", () => {
  it("has curves that say that there is nothing to hear yet", async () => {
    const reply = await post("/api/response", { build, sources: true });
    expect(reply.statusCode).toBe(200);
    const { curves } = reply.json();
    expect(curves).toHaveLength(55);
    for (const curve of curves) {
      expect(curve.label).toBe("nothing to hear yet: no pickup");
      expect(curve).toMatchObject({ peak: null, cutoff: null, sources: [] });
    }
  });

  it.each(["/api/preview", "/api/previews"])("is refused by %s in plain words", async (url) => {
    const reply = await post(url, { build, settings: {} });
    expect(reply.statusCode).toBe(422);
    expect(reply.json().errors).toEqual([
      {
        path: "build.parts",
        message: 'there is no pickup yet, so there is nothing to hear; expected a part of kind "pickup"',
      },
    ]);
  });

  it("is read, metered and sheeted by the bench", async () => {
    const reply = await post("/api/bench", { build });
    expect(reply.statusCode).toBe(200);
    const { audit, readings, sheet, partsList } = reply.json();
    expect(audit).toMatchObject([
      { code: "no-pickup", severity: "note", lugs: ["lever.A1", "lever.A2", "lever.A3"] },
      { code: "position-without-tone", severity: "note" },
    ]);
    expect(readings.slice(0, 15).map(({ label }: { label: string }) => label)).toContain(
      "lever.A2 to jack tip, lever 3",
    );
    expect(sheet.sittings).toHaveLength(1);
    expect(sheet.sittings[0].stages.length).toBeGreaterThan(0);
    expect(JSON.stringify(partsList)).not.toContain("pickup");
  });

  it("is diagnosed like any guard", async () => {
    const { readings } = (await post("/api/bench", { build })).json();
    const between = ["lever.A2", "jack.tip"];
    const [expected] = readings.filter((each: { label: string }) => each.label === "lever.A2 to jack tip, lever 3");
    const reply = await post("/api/diagnose", {
      build,
      readings: [{ settings: expected.settings, between, ohms: null }],
    });
    expect(reply.statusCode).toBe(200);
    const kinds = reply
      .json()
      .explanations.flatMap((each: { faults: { kind: string }[] }) => each.faults.map(({ kind }) => kind));
    expect(kinds.join()).toMatch(/open/);
  });

  it("travels in a link", async () => {
    const { code } = (await post("/api/link", { build })).json();
    const opened = await service.app.inject({ url: `/api/link/${code}` });
    expect(opened.json().build.parts).toEqual(build.parts);
    const page = await service.app.inject({ url: `/b/${code}` });
    expect(page.body).toContain('content="A harness without pickups yet');
  });

  it.each(["/api/impulse.wav", "/api/preview.wav"])("has no %s", async (url) => {
    const { code } = (await post("/api/link", { build })).json();
    const reply = await service.app.inject({ url: `${url}?build=${code}` });
    expect(reply.statusCode).toBe(422);
    expect(reply.json().detail).toContain("nothing to hear");
  });
});
