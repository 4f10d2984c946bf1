import { describe, expect, it } from "vitest";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { Symptom } from "../../../src/bench/symptoms/witness.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";

const JACK = ["jack.tip", "jack.sleeve"] as const;

const one = readBuild({
  ...onePickup({ parts: { claw: { kind: "terminal", role: "claw" } } }),
  wires: [...(onePickup() as { wires: unknown[] }).wires, ["claw", "volume.case"]],
});
/** The middle pickup reverse wound and of reverse polarity: in phase with the others. */
const middle = { resistance: "6.3k", inductance: "2.6H", winding: "reverse", magnet: "south", output: 0.95 };
const three = readBuild(threeSingles({ parts: { middle: { kind: "pickup", coils: { coil: middle } } } }));
const positions = [6620, 3185, 6145, 2975, 5765];
const soundReadings = positions.map((ohms, index) => ({ between: JACK, settings: { lever: index + 1 }, ohms }));

function named(build: typeof one, symptoms: readonly Symptom[], readings = soundReadings): string[] {
  const [first] = diagnose(build, { symptoms, readings }).explanations;
  return [first!, ...first!.sameAs].map(({ faults }) => faults.map(({ kind, lugs }) => `${kind} ${lugs}`).join(" + "));
}

describe("what was heard, with readings that are as they should be", () => {
  it.each<[string, Symptom[], string]>([
    [
      "thin in 2, the others fine",
      [{ code: "thin", settings: { lever: 2 } }],
      "leads-swapped bridge.hot,bridge.ground",
    ],
    [
      "thin in 2 and in 4",
      [
        { code: "thin", settings: { lever: 2 } },
        { code: "thin", settings: { lever: 4 } },
      ],
      "leads-swapped middle.hot,middle.ground",
    ],
    [
      "tone 1 does nothing in 5",
      [{ code: "tone-no-effect", settings: { lever: 5 }, control: "tone1" }],
      "wire-open lever.B3,tone1.2",
    ],
  ])("%s", (_, symptoms, expected) => {
    expect(named(three, symptoms)).toContain(expected);
  });

  it.each<[string, Symptom[], string]>([
    ["noise grows on touching the strings", [{ code: "buzz-on-touch" }], "jack-swapped jack.tip,jack.sleeve"],
    ["touching the strings does not quiet the buzz", [{ code: "touch-no-effect" }], "wire-open claw,volume.case"],
    ["the volume works backwards", [{ code: "volume-backwards" }], "outer-lugs-swapped volume.1,volume.3"],
    ["sound at volume 0", [{ code: "volume-never-silent" }, { code: "hum" }], "wire-open volume.1,volume.case"],
    ["no sound at all", [{ code: "no-sound" }], "wire-open volume.2,jack.tip"],
  ])("%s, and nothing measured", (_, symptoms, expected) => {
    expect(named(one, symptoms, [])).toContain(expected);
  });

  it("takes a single untypical word for a slip where every reading speaks for a sound guard", () => {
    const { explanations } = diagnose(one, {
      readings: [
        { between: JACK, ohms: 5850 },
        { between: JACK, settings: { volume: 0 }, ohms: 0.3 },
        { between: JACK, sweep: "volume", ohms: 64e3 },
        { between: ["claw", "jack.sleeve"], ohms: 0.4 },
      ],
      symptoms: [{ code: "volume-backwards" }],
    });
    expect(explanations[0]!.faults[0]!.kind).toBe("none");
  });

  it.each<[Symptom, string]>([
    [{ code: "thin", settings: { lever: 7 } }, "symptoms.0.settings.lever"],
    [{ code: "tone-no-effect", control: "lever" }, "symptoms.0.control"],
  ])("refuses %o and names %s", (symptom, path) => {
    expect(() => diagnose(three, { readings: [], symptoms: [symptom] })).toThrow(
      expect.objectContaining({ faults: [expect.objectContaining({ path })] }),
    );
  });
});
