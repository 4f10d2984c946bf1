import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { auditBuild, FINDING_CODES } from "../../../src/bench/audit/audit.ts";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { LugTable } from "../../../src/build-file/lugs.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { expandSweep } from "../../../src/build-file/sweep.ts";
import { curveOf } from "../../../src/response/curve.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { humLevelDb } from "../../../src/response/hum.ts";
import { ActivityReader } from "../../../src/response/labels/activity.ts";
import { SettingDescriber } from "../../../src/response/labels/setting-describer.ts";
import { buildOf, humbucker, single, splitHumbucker, threeSingles, twoHumbuckers } from "./guards.ts";

const pickup = fc.oneof(
  fc.constantFrom("forward", "reverse").map((winding) => single({ winding, loss: "1M" })),
  fc.constantFrom(2, 4).map((conductors) => ({ ...humbucker(), conductors })),
);
const pot = fc.record(
  {
    kind: fc.constant("pot"),
    resistance: fc.constantFrom("250k", "500k"),
    role: fc.constantFrom("volume", "tone", "blend"),
    taper: fc.constantFrom("audio", "linear"),
    noLoad: fc.boolean(),
    drives: fc.constantFrom("spdt", "dpdt"),
  },
  { requiredKeys: ["kind", "resistance"] },
);
const part = fc.oneof(
  pickup,
  pot,
  fc.constantFrom("toggle-3", "lever-3", "lever-5", "spdt", "dpdt").map((type) => ({ kind: "switch", type })),
  fc.constantFrom("22n", "470n", "680p").map((capacitance) => ({ kind: "cap", capacitance })),
  fc.constantFrom("1k", "150k").map((resistance) => ({ kind: "resistor", resistance })),
  fc.constantFrom("claw", "shield", "other").map((role) => ({ kind: "terminal", role })),
);

/** Valid parts with wires between any of their lugs. */
const anyBuild: fc.Arbitrary<Build> = fc
  .tuple(pickup, fc.array(part, { minLength: 1, maxLength: 8 }))
  .chain(([first, others]) => {
    const parts = Object.fromEntries([
      ["jack", { kind: "jack" }],
      ["p0", first],
      ...others.map((other, index) => [`p${index + 1}`, other]),
    ]);
    const bare = parseLongForm({ presolder: 1, parts, wires: [] });
    const lug = fc.constantFrom(...new LugTable(bare.parts).lugs.map(({ name }) => name));
    return fc
      .array(fc.tuple(lug, lug), { maxLength: 30 })
      .map((wires) => ({ ...bare, wires: wires.map(([from, to]) => ({ from, to })) }));
  });

/** A well-wired guard after a clumsy hand: a few wires off, a few wires more. */
const spoiltBuild: fc.Arbitrary<Build> = fc
  .constantFrom(threeSingles, twoHumbuckers, splitHumbucker)
  .map((guard) => buildOf(guard))
  .chain((build) => {
    const lug = fc.constantFrom(...new LugTable(build.parts).lugs.map(({ name }) => name));
    const extra = fc.array(fc.record({ from: lug, to: lug }), { maxLength: 3 });
    const kept = fc.subarray(build.wires, { minLength: build.wires.length - 3 });
    return fc.tuple(kept, extra).map(([wires, more]) => ({ ...build, wires: [...wires, ...more] }));
  });

const anyOrSpoilt = fc.oneof(anyBuild, spoiltBuild);

const FREQUENCIES = Float64Array.of(20, 200, 2000, 20_000);
const RUNS = 100;

describe("any wiring of valid parts", () => {
  test("is audited without an error, in known codes, real lugs and settings that the build accepts", () => {
    fc.assert(
      fc.property(anyOrSpoilt, (build) => {
        const table = new LugTable(build.parts);
        const controls = new Controls(build);
        for (const { code, severity, lugs, settings, message, remedy } of auditBuild(build)) {
          expect(FINDING_CODES).toHaveProperty(code);
          expect(["fault", "warning", "note"]).toContain(severity);
          expect(lugs.length).toBeGreaterThan(0);
          for (const name of lugs) expect(table.find(name)).toBeDefined();
          for (const setting of settings) parseSettings(controls, setting);
          expect(`${message} ${remedy}`).not.toMatch(/undefined|NaN|Infinity|null|\[object/);
        }
      }),
      { numRuns: RUNS },
    );
  });

  test("has finite curves and hum, a label, and known controls in every position", () => {
    fc.assert(
      fc.property(anyOrSpoilt, (build) => {
        const engine = new ResponseEngine(build);
        const describer = new SettingDescriber(build);
        const activity = new ActivityReader(build, (settings) => engine.transfersIn(settings));
        const { main } = activity.controls;
        const positions = main ? main.table.positions.map((_, index) => index + 1) : [];
        for (const settings of expandSweep(activity.controls, main ? { [main.name]: positions } : {})) {
          const transfers = engine.transfersIn(settings);
          const { magnitude, phase } = curveOf(transfers, FREQUENCIES);
          for (const value of [...magnitude, ...phase, humLevelDb(transfers)]) expect(value).toSatisfy(Number.isFinite);
          const { label, coils, relation } = describer.describe(settings);
          expect(label).not.toBe("");
          expect(relation === "silent").toBe(coils.length === 0);
          for (const name of activity.activeIn(settings)) expect(activity.controls.names).toContain(name);
        }
      }),
      { numRuns: RUNS },
    );
  });
});
