import { describe, expect, test } from "vitest";
import { expandBuild } from "../../src/build-file/expand.ts";
import type { PlanInput } from "../../src/build-file/plans/plan-schema.ts";
import { faultsFrom } from "./refusals.ts";

const SINGLES = { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "single-vintage" };
const HSS = { ...SINGLES, bridge: "humbucker-medium" };
const tone = (pickup: string) => ({ pot: "250k", cap: "22n", pickups: [pickup] });
const GOOD: PlanInput = {
  layout: "lever-5-two-tone",
  pickups: HSS,
  volume: "250k",
  tones: [tone("neck"), tone("middle")],
};
const PAIR: PlanInput = {
  layout: "toggle-3-two-volumes",
  pickups: { neck: "humbucker-vintage", bridge: "humbucker-medium" },
  volume: "500k",
};

const refusal = (base: PlanInput, changes: object) =>
  faultsFrom(() => expandBuild({ presolder: 1, plan: { ...base, ...changes } }));

test("the plans that the refusals start from are accepted", () => {
  for (const plan of [GOOD, PAIR]) expect(() => expandBuild({ presolder: 1, plan })).not.toThrow();
});

describe("a plan that cannot be wired is refused where it goes wrong", () => {
  test.each<[PlanInput, object, string, RegExp]>([
    [GOOD, { layout: "lever-5-two-tones" }, "layout", /did you mean "lever-5-two-tone"/],
    [GOOD, { lever: 5 }, "lever", /unknown key "lever"/],
    [GOOD, { trebleBlead: {} }, "trebleBlead", /did you mean "trebleBleed"/],
    [GOOD, { pickups: { ...HSS, neck: "single-vintge" } }, "pickups.neck", /did you mean "single-vintage"/],
    [GOOD, { pickups: { neck: "p90", bridge: "p90" } }, "pickups", /has no "middle"/],
    [GOOD, { pickups: { ...HSS, brige: "p90" } }, "pickups.brige", /did you mean "bridge"/],
    [GOOD, { pickups: { ...HSS, neck: 5 } }, "pickups.neck", /expected a pickup type/],
    [GOOD, { pickups: { ...HSS, neck: { type: "p90", coil: {} } } }, "pickups.neck.coil", /did you mean "coils"/],
    [
      GOOD,
      { pickups: { ...HSS, neck: { type: "p90", coils: { slug: { resistance: "8k" } } } } },
      "pickups.neck.coils.slug",
      /p90 has no such coil/,
    ],
    [GOOD, { volume: "0" }, "volume", /expected more than 0/],
    [GOOD, { volume: undefined }, "volume", /`volume` or, with two volumes, `volumes`/],
    [GOOD, { volume: undefined, volumes: [{ pot: "250k", pickups: ["neck"] }] }, "volumes", /has one volume/],
    [GOOD, { tones: [tone("neck")] }, "tones", /has 1; lever-5-two-tone takes 2/],
    [GOOD, { tones: [tone("neck"), tone("neck")] }, "tones.1.pickups", /neck is already on tone 1/],
    [GOOD, { tones: [tone("neck"), tone("midle")] }, "tones.1.pickups", /did you mean "middle"/],
    [GOOD, { tones: [tone("neck"), { pot: "250k", pickups: ["middle"] }] }, "tones.1.cap", /`cap` of its own/],
    [GOOD, { sharedCap: "22n" }, "tones.0.cap", /`cap` of its own or the plan's `sharedCap`/],
    [GOOD, { tones: [tone("neck"), { ...tone("middle"), cap: "0,022" }] }, "tones.1.cap", /decimal point/],
    [GOOD, { trebleBleed: { capacitance: "680p", parallel: "150k", series: "100k" } }, "trebleBleed", /either/],
    [GOOD, { split: { pickup: "neck", by: "tone1" } }, "split.0.pickup", /neck has one coil/],
    [GOOD, { split: { pickup: "brdge", by: "tone1" } }, "split.0.pickup", /did you mean "bridge"/],
    [GOOD, { split: { pickup: "bridge", by: "tone3" } }, "split.0.by", /did you mean "tone[12]"/],
    [GOOD, { split: { pickup: "bridge", by: "tone1", keeps: "scrw" } }, "split.0.keeps", /did you mean "screw"/],
    [GOOD, { split: { pickup: "bridge", by: { position: 3 } } }, "split", /bridge pickup in position 2/],
    [PAIR, { split: { pickup: "bridge", by: { position: 2 } } }, "split", /needs a five-position lever/],
    [PAIR, { split: { pickup: "neck", by: "volume1" } }, "split.0.pickup", /two conductors; expected four/],
    [
      GOOD,
      { seriesParallel: { pickup: "bridge", by: "tone1" }, split: { pickup: "bridge", by: "tone2" } },
      "seriesParallel.0.pickup",
      /split already/,
    ],
    [
      GOOD,
      { phase: { pickup: "middle", by: "tone1" }, split: { pickup: "bridge", by: "tone1" } },
      "phase.0.by",
      /two poles and 1 already in use; expected 2 free/,
    ],
    [GOOD, { phase: { pickup: "middle", by: { switch: "neck" } } }, "phase.0.by", /already another part's/],
    [GOOD, { seriesLink: { pickups: ["neck", "neck"], by: "tone1" } }, "seriesLink.pickups.1", /another pickup/],
    [GOOD, { alwaysOn: { pickup: "brige", by: "tone1" } }, "alwaysOn.pickup", /did you mean "bridge"/],
    [GOOD, { resistors: [{ across: "tone9", resistance: "1M" }] }, "resistors.0.across", /did you mean "tone[12]"/],
    [GOOD, { grounds: "chassis" }, "grounds", /"cases", "star"/],
    [
      GOOD,
      {
        split: { pickup: "bridge", by: { position: 2 } },
        tones: [tone("neck"), { ...tone("middle"), pickups: ["middle", "bridge"] }],
      },
      "tones.1.pickups",
      /no switch pole is free to part them/,
    ],
    [
      GOOD,
      { split: { pickup: "bridge", by: { position: 2 } }, toneFeed: "after-volume" },
      "toneFeed",
      /no switch pole is free to pick tones after the volume/,
    ],
    [
      GOOD,
      { split: { pickup: "bridge", by: { position: 2 } }, phase: { pickup: "bridge", by: "tone1" } },
      "split",
      /its ground lead is switched/,
    ],
    [PAIR, { volume: undefined, volumes: [{ pot: "500k", pickups: ["neck"] }] }, "volumes", /expected two/],
    [
      PAIR,
      {
        volume: undefined,
        volumes: [
          { pot: "500k", pickups: ["neck"] },
          { pot: "500k", pickups: ["neck"] },
        ],
      },
      "volumes.1.pickups",
      /neck has a volume already/,
    ],
  ])("%#: %j with %j", (base, changes, path, message) => {
    const faults = refusal(base, changes);
    expect(faults.map((fault) => fault.path)).toContain(`build.plan.${path}`);
    expect(faults.find((fault) => fault.path === `build.plan.${path}`)!.message).toMatch(message);
  });

  test("one pickup is one pickup", () => {
    const faults = faultsFrom(() =>
      expandBuild({
        presolder: 1,
        plan: { layout: "one-pickup", pickups: { neck: "p90", bridge: "p90" }, volume: "500k" },
      }),
    );
    expect(faults).toEqual([{ path: "build.plan.pickups", message: "has 2 pickups; expected exactly one" }]);
  });

  test("a build is either a plan or a long form", () => {
    const faults = faultsFrom(() => expandBuild({ presolder: 1, plan: GOOD, wires: [] }));
    expect(faults).toEqual([{ path: "build.wires", message: "expected either `plan` or `wires`, not both" }]);
  });
});
