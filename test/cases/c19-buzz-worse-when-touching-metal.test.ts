import { describe, expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import { parseLongForm } from "../../src/build-file/build-file.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { levelsAt, ohmsBetween } from "./measured.ts";

const guard = (tip: string, sleeve: string) =>
  withIdealPots(
    parseLongForm(
      onePickup({
        parts: { claw: { kind: "terminal", role: "claw" } },
        wires: [
          ["pickup.hot", "volume.3"],
          ["pickup.ground", "volume.case"],
          ["volume.1", "volume.case"],
          ["tone.2", "volume.3"],
          ["tone.1", "cap.a"],
          ["cap.b", "tone.case"],
          ["tone.case", "volume.case"],
          ["claw", "volume.case"],
          ["volume.2", tip],
          ["volume.case", sleeve],
        ],
      }),
    ),
  );

const right = guard("jack.tip", "jack.sleeve");
const swapped = guard("jack.sleeve", "jack.tip");

describe("C19: buzz gets worse when touching metal", () => {
  test("the jack reads 5.859 kΩ and the response is the same: neither shows it", () => {
    expect(ohmsBetween(swapped, "jack.tip", "jack.sleeve")).toBeCloseTo(5859, 0);
    const frequencies = [...logSpaced(20, 20_000, 30)];
    const expected = levelsAt(right, frequencies, { volume: 7, tone: 4 });
    for (const [i, level] of levelsAt(swapped, frequencies, { volume: 7, tone: 4 }).entries())
      expect(level).toBeCloseTo(expected[i]!, 6);
  });

  test("strings to sleeve read the pickup instead of 0 Ω, strings to tip 0 Ω", () => {
    expect(ohmsBetween(swapped, "claw", "jack.sleeve")).toBeCloseTo(5859, 0);
    expect(ohmsBetween(swapped, "claw", "jack.tip")).toBe(0);
    expect(ohmsBetween(right, "claw", "jack.sleeve")).toBe(0);
  });

  test("the audit finds the swap, asks for the strings-to-sleeve reading, and finds nothing else wrong", () => {
    const found = auditBuild(swapped);
    expect(found.filter(({ severity }) => severity !== "note").map(({ code }) => code)).toEqual(["jack-swapped"]);
    expect(found[0]!.remedy).toContain("measure from the strings to the sleeve: about 0 Ω");
    expect(auditBuild(right).map(({ code }) => code)).not.toContain("jack-swapped");
  });

  test("without a claw in the build the audit still asks for that reading", () => {
    const { claw: _, ...parts } = right.parts;
    const clawless = { ...right, parts, wires: right.wires.filter(({ from }) => from !== "claw") };
    const note = auditBuild(clawless).find(({ code }) => code === "strings-not-shown");
    expect(note!.remedy).toContain("from the strings to the jack's sleeve: about 0 Ω");
  });
});
