import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { benchAnswerSchema } from "../../../src/contract/bench/bench.ts";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { onePickup } from "../../fixtures/circuits.ts";

describe("POST /api/bench", () => {
  let app: App;
  beforeAll(async () => {
    app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
  });
  afterAll(() => app.close());

  const post = (payload: object) => app.inject({ method: "POST", url: "/api/bench", payload });

  it("answers standing readings, probes and what it solved backwards", async () => {
    const response = await post({
      build: onePickup(),
      temperature: 25,
      probes: [{ between: ["tone.case", "jack.sleeve"] }],
      solve: { coil: { reading: "5.18k", pot: "250k", tolerance: 0.2 }, sweep: { atTen: 5859.375, highest: 64000 } },
    });
    expect(response.statusCode).toBe(200);
    const { temperature, readings, probes, solved } = response.json();
    expect(temperature).toBe(25);
    expect(readings[0]).toMatchObject({ label: "jack", between: ["jack.tip", "jack.sleeve"] });
    expect(probes).toMatchObject([{ ohms: 0, low: 0, high: 1 }]);
    expect(solved.coil.ohms).toBeCloseTo(5289.6, 0);
    expect(solved.sweep.coil).toBeCloseTo(6000, 6);
    expect(solved.sweep.pot).toBeCloseTo(250e3, 6);
  });

  it("refuses a negative slack or strip by its field, with the least that it takes", async () => {
    const payload = { build: onePickup(), allowances: { slack: -0.005 } };
    const reply = await app.inject({ method: "POST", url: "/api/bench", payload });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors).toEqual([{ path: "allowances.slack", message: expect.stringContaining("at least 0") }]);
  });

  it("answers audit, build sheet, parts list and phase check, the sheet beginning with cautions", async () => {
    const drawer = [{ part: { kind: "cap", capacitance: "223" }, quantity: 1 }];
    const payload = { build: onePickup(), drawer, allowances: { slack: "5cm" } };
    const { audit, sheet, partsList, phaseCheck } = (await post(payload)).json();
    expect(audit.map(({ code }: { code: string }) => code)).toContain("strings-not-shown");
    expect(Object.keys(sheet)[0]).toBe("cautions");
    expect(sheet.allowances).toMatchObject({ slack: 0.05, strip: 0.006, jackLoop: 0.09 });
    expect(partsList.totals).toMatchObject({ parts: 5, fromDrawer: 1, toBuy: 4 });
    expect(phaseCheck.pickups).toHaveLength(1);
  });

  it("answers a schedule for the reels, kinds, lengths, iron and most ends that were asked for", async () => {
    const payload = {
      build: onePickup(),
      reels: [
        { colour: "Yellow", kind: "cloth", metres: "2m" },
        { colour: "black", kind: "cloth" },
      ],
      kinds: { hot: "cloth", ground: "cloth" },
      allowances: { jackLoop: "12cm" },
      maxEnds: 3,
      iron: { watts: 25, solder: "lead-free" },
    };
    const { sheet } = (await post(payload)).json();
    expect(sheet.sittings.map(({ title }: { title: string }) => title)).toEqual([
      "The harness, without the pickups",
      "The pickups",
    ]);
    const joints = sheet.sittings.flatMap(({ stages }: { stages: { joints: { ends: object[] }[] }[] }) =>
      stages.flatMap((stage) => stage.joints),
    );
    expect(Math.max(...joints.map(({ ends }: { ends: object[] }) => ends.length))).toBeLessThanOrEqual(3);
    expect(sheet.reels.map(({ colour }: { colour: string }) => colour)).toEqual(
      expect.arrayContaining(["yellow", "black"]),
    );
    expect(sheet.allowances.jackLoop).toBe(0.12);
  });

  it.each([
    ["reels.0.kind", { reels: [{ colour: "red", kind: "silk" }] }, /cloth.*plastic.*bare.*screened/],
    ["reels.0.metres", { reels: [{ colour: "red", metres: "-1m" }] }, /above 0|greater|more than 0/],
    ["kinds.hot", { kinds: { hot: "wool" } }, /cloth/],
    ["maxEnds", { maxEnds: 2 }, /3/],
    ["iron.watts", { iron: { watts: 5 } }, /10/],
  ])("refuses %s that cannot be", async (path, changes, message) => {
    const reply = await app.inject({ method: "POST", url: "/api/bench", payload: { build: onePickup(), ...changes } });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors).toEqual([{ path, message: expect.stringMatching(message) }]);
  });

  it("answers how the guard is fitted and closed, its hardware, and what stays over in the drawer", async () => {
    const drawer = [{ part: { kind: "cap", capacitance: "47n" }, quantity: 2 }];
    const { mounting, hardware, staysOver } = (await post({ build: onePickup(), drawer })).json();
    expect(mounting.before[0]).toMatchObject({
      title: expect.any(String),
      text: expect.any(String),
      parts: ["volume", "tone"],
    });
    expect(mounting.closing.at(-1)).toMatchObject({ title: "Acceptance readings", readings: [{ label: "jack" }] });
    expect(hardware).toContainEqual(expect.objectContaining({ what: "guard screw", quantity: null }));
    expect(staysOver).toEqual([{ what: "cap 47 nF ±10 %", code: "473K", quantity: 2, drawer: [0] }]);
  });

  it("answers what the documented schema says", async () => {
    for (const { build } of scenarioBuilds.slice(0, 4)) {
      const answer = (await post({ build })).json();
      expect(() => benchAnswerSchema.parse(answer)).not.toThrow();
    }
  });

  it.each([
    [{ build: onePickup(), temperature: 2000 }, "temperature"],
    [{ build: onePickup(), probes: [{ between: ["jack.tip", "jack.tap"] }] }, "probes.0.between.1"],
    [{ build: onePickup(), solve: { sweep: { atTen: "5k", highest: "4k" } } }, "solve.sweep.highest"],
    [{ build: { presolder: 1, parts: {}, wires: [] } }, "build.parts"],
  ])("refuses what cannot be read and names the field: %#", async (payload, path) => {
    const response = await post(payload);
    expect(response.statusCode).toBe(400);
    expect(response.json().errors[0].path).toBe(path);
  });
});
