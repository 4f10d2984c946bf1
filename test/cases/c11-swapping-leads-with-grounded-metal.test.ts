import { describe, expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import { buildOf, leadsSwapped, single, threeSingles } from "../bench/audit/guards.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { ohmsBetween } from "./measured.ts";

// 7 kΩ and 250 kΩ are common practice, no source; the reading is the one in parallel with the other.
/** A pickup of opposite winding alone, with a cover jumpered to its ground lead: out of phase with its neighbours. */
const covered = single({ resistance: "7k", winding: "reverse", distance: "0.042m" }, { metal: "cover" });
const jumper: readonly [string, string] = ["bridge.shield", "bridge.ground"];

const { remove, add } = leadsSwapped("bridge", "lever.A1");

const parts = { bridge: covered };
const before = buildOf(threeSingles, { parts, add: [jumper] });
const plainSwap = withIdealPots(buildOf(threeSingles, { parts, remove, add: [...add, jumper] }));
const separated = buildOf(threeSingles, { parts, remove, add: [...add, ["bridge.shield", "volume.case"]] });

const codes = (build: typeof before) => auditBuild(build).map(({ code }) => code);

describe("C11: swapping leads on a pickup with grounded metal", () => {
  test("the advice to swap also says to separate the cover's jumper", () => {
    const found = auditBuild(before).find(({ code }) => code === "pair-out-of-phase");
    expect(found!.remedy).toContain("Swap the two leads of bridge.");
    expect(found!.remedy).toContain("cut the cover jumper and run it to ground on its own");
    expect(codes(before)).not.toContain("shield-hot");
  });

  test("after a plain swap the cover reads the pickup to the sleeve and 0 Ω to the tip", () => {
    const toSleeve = ohmsBetween(plainSwap, "bridge.shield", "jack.sleeve", { lever: 1 })!;
    expect(toSleeve).toBeCloseTo(1 / (1 / 7000 + 1 / 250_000), 3);
    expect(Math.abs(toSleeve / 7000 - 1)).toBeLessThan(0.03);
    expect(ohmsBetween(plainSwap, "bridge.shield", "jack.tip", { lever: 1 })).toBe(0);
  });

  test("the audit of the plain swap finds the cover on the hot side, and the phase mended", () => {
    const found = auditBuild(plainSwap).find(({ code }) => code === "shield-hot");
    expect(found).toMatchObject({ severity: "fault", settings: [] });
    expect(found!.lugs).toContain("bridge.shield");
    expect(codes(plainSwap)).not.toContain("pair-out-of-phase");
  });

  test("with the jumper separated the cover is at 0 Ω to the sleeve and the jack reads as before", () => {
    expect(ohmsBetween(separated, "bridge.shield", "jack.sleeve", { lever: 1 })).toBe(0);
    const reading = (build: typeof before) => ohmsBetween(build, "jack.tip", "jack.sleeve", { lever: 1 });
    expect(reading(separated)).toBe(reading(before));
    expect(codes(separated)).not.toContain("shield-hot");
  });
});
