import { describe, expect, it } from "vitest";
import { leadsAnswerSchema } from "../../../src/contract/bench/leads.ts";
import { MAX_LABELLINGS_LISTED, MAX_LEAD_NAME_CHARS, MAX_LEAD_TESTS, MAX_LEADS } from "../../../src/limits.ts";
import { PLAN } from "../plan.ts";
import { useService } from "../service.ts";

const service = useService();
const post = (payload: object) => service.app.inject({ method: "POST", url: "/api/leads", payload });

const SINGLE = {
  leads: ["red", "white"],
  rows: ["poles"],
  metal: "none",
  readings: [{ between: ["red", "white"], ohms: "6k1" }],
  kicks: [{ row: "poles", between: ["red", "white"], kick: "down" }],
  compass: [{ row: "poles", draws: "south" }],
};

describe("POST /api/leads", () => {
  it("tells a single coil's two leads, and puts it into the guard in place of the neck pickup", async () => {
    const reply = await post({ ...SINGLE, build: PLAN, place: "neck" });
    expect(reply.statusCode).toBe(200);
    const answer = leadsAnswerSchema.parse(reply.json());
    // It draws the needle's south end, so it is north, and kicks down with + on red: red is the start.
    expect(answer.labellings[0]).toMatchObject({
      coils: [{ start: "red", finish: "white", magnet: "north", winding: "forward" }],
      joined: "one",
    });
    expect(answer.labellings.length).toBeLessThanOrEqual(MAX_LABELLINGS_LISTED);
    expect(answer.withGuard).toMatchObject({ place: "neck", name: "neck" });
    expect(answer.guard.parts.neck.coils.coil.resistance).toBe("6.1k");
    expect(
      (await service.app.inject({ method: "POST", url: "/api/expand", payload: { build: answer.guard } })).statusCode,
    ).toBe(200);
  });

  it("answers the same to the same question, without a guard as with none", async () => {
    const [first, second] = [await post(SINGLE), await post(SINGLE)];
    expect(first.body).toBe(second.body);
    expect(first.json()).toMatchObject({ withGuard: null, guard: null });
  });

  it.each([
    ["leads", { leads: ["red"] }, /at least 2/],
    [
      "leads",
      { leads: Array.from({ length: MAX_LEADS + 1 }, (_, index) => `lead ${index}`) },
      new RegExp(`at most ${MAX_LEADS}`),
    ],
    ["leads.0", { leads: ["x".repeat(MAX_LEAD_NAME_CHARS + 1), "white"] }, new RegExp(String(MAX_LEAD_NAME_CHARS))],
    ["readings", { readings: Array(MAX_LEAD_TESTS + 1).fill(SINGLE.readings[0]) }, new RegExp(String(MAX_LEAD_TESTS))],
    ["readings.0.ohms", { readings: [{ between: ["red", "white"], ohms: "much" }] }, /quantity such as/],
    ["kicks.0.kick", { kicks: [{ row: "poles", between: ["red", "white"], kick: "left" }] }, /"up", "down"/],
    ["metal", { metal: "some" }, /"none" where the pickup has no metal/],
    ["kicks.0.between.0", { kicks: [{ row: "poles", between: ["rde", "white"], kick: "up" }] }, /no lead "rde".*"red"/],
    ["place", { build: PLAN }, /is missing/],
    ["build", { place: "neck" }, /is missing/],
    ["place", { build: PLAN, place: "nekc" }, /neither a pickup nor a free place.*neck/],
    [
      "reference.pickup",
      { build: PLAN, place: "neck", reference: { pickup: "brid", kick: "up" } },
      /heard at the jack/,
    ],
    ["build.plan.layout", { build: { presolder: 1, plan: { ...PLAN.plan, layout: "none" } }, place: "neck" }, /./],
  ] as const)("refuses %s by its path", async (path, change, message) => {
    const reply = await post({ ...SINGLE, ...change });
    expect(reply.statusCode).toBe(400);
    const fault = reply.json().errors.find((each: { path: string }) => each.path === path);
    expect(fault?.message, JSON.stringify(reply.json().errors)).toMatch(message);
  });
});
