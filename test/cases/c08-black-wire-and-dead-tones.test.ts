import { describe, expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import { parseLongForm } from "../../src/build-file/build-file.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { activeControls } from "../../src/response/labels/activity.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { levelsAt, ohmsBetween } from "./measured.ts";

const WIRES: [string, string][] = [
  ["pickup.hot", "volume.3"],
  ["pickup.ground", "volume.case"],
  ["volume.2", "jack.tip"],
  ["volume.1", "volume.case"],
  ["volume.case", "jack.sleeve"],
  ["tone.2", "volume.3"],
  ["tone.1", "cap.a"],
  ["cap.b", "tone.case"],
];
const FREQUENCIES = [...logSpaced(20, 20_000, 40)];

/** The tone's case is the cap's only ground, and has no wire of its own. */
const unbonded = withIdealPots(parseLongForm(onePickup({ wires: WIRES })));
const bonded = withIdealPots(parseLongForm(onePickup({ wires: [...WIRES, ["tone.case", "volume.case"]] })));
const noTone = withIdealPots(parseLongForm(onePickup({ wires: WIRES.slice(0, 5) })));

// 6 kΩ ∥ 250 kΩ is 5859 Ω; all else here is equality with a guard that is wired otherwise.
describe("C08: a cap leg on a case without ground", () => {
  test.each([0, 3, 7, 10])("the response at tone %i equals that of no tone control", (tone) => {
    const expected = levelsAt(noTone, FREQUENCIES);
    const levels = levelsAt(unbonded, FREQUENCIES, { tone });
    for (const [i, level] of levels.entries()) expect(level).toBeCloseTo(expected[i]!, 6);
  });

  test("the tone control does nothing, and does something once its case is grounded", () => {
    const active = (build: typeof bonded) => activeControls(build, parseSettings(new Controls(build)));
    expect(active(unbonded)).toEqual(["volume"]);
    expect(active(bonded)).toEqual(["volume", "tone"]);
  });

  test("the jack reads 5.859 kΩ either way, and tone case to sleeve reads open", () => {
    expect(ohmsBetween(unbonded, "jack.tip", "jack.sleeve")).toBeCloseTo(5859, 0);
    expect(ohmsBetween(bonded, "jack.tip", "jack.sleeve")).toBeCloseTo(5859, 0);
    expect(ohmsBetween(unbonded, "tone.case", "jack.sleeve")).toBeNull();
    expect(ohmsBetween(bonded, "tone.case", "jack.sleeve")).toBe(0);
  });

  test("the audit names the case and the cap leg that relies on it", () => {
    const found = auditBuild(unbonded).find(({ code }) => code === "case-ungrounded");
    expect(found).toMatchObject({ severity: "fault", lugs: ["tone.case", "cap.b"], settings: [] });
    expect(found!.remedy).toContain("do not trust the shielding foil");
    expect(auditBuild(bonded).map(({ code }) => code)).not.toContain("case-ungrounded");
  });
});
