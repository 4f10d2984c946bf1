import { describe, expect, it } from "vitest";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { Symptom } from "../../../src/bench/symptoms/witness.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

const JACK = ["jack.tip", "jack.sleeve"] as const;
const build = readBuild(
  threeSingles({
    parts: { claw: { kind: "terminal", role: "claw" }, foil: { kind: "terminal", role: "shield" } },
    wires: [
      ["claw", "volume.case"],
      ["foil", "volume.case"],
    ],
  }),
);
/** As they should be. */
const readings = [6620, 3185, 6145, 2975, 5765].map((ohms, index) => ({
  between: JACK,
  settings: { lever: index + 1 },
  ohms,
}));

function ask(...symptoms: Symptom[]) {
  const { explanations, nextMeasurement } = diagnose(build, { readings, symptoms });
  const [first] = explanations;
  const named = [first!, ...first!.sameAs].map(({ faults }) =>
    faults.map(({ kind, lugs }) => `${kind} ${lugs}`).join(" + "),
  );
  return { named, next: nextMeasurement };
}

describe("what is felt while playing, with readings that are as they should be", () => {
  it.each<[Symptom, string, RegExp]>([
    [{ code: "crackle-on-lead" }, "cable-bad jack.tip,jack.sleeve", /another instrument lead/],
    [{ code: "crackle-on-lead" }, "jack-spring jack.tip,jack.sleeve", /another instrument lead/],
    [{ code: "crackle-on-lever" }, "switch-worn lever.A0", /work the switch/],
    [{ code: "pot-scratchy", control: "tone2" }, "pot-scratchy tone2.2", /turn the pot from end to end/],
    [{ code: "pot-turns", control: "volume" }, "pot-loose volume.case", /tighten its nut/],
    [{ code: "howl" }, "pickup-microphonic bridge.hot,bridge.ground", /tap the pickup/],
  ])("%o points to %s, and to something to do", (symptom, expected, what) => {
    const { named, next } = ask(symptom);
    expect(named).toContain(expected);
    expect(next).toMatchObject({ kind: "try" });
    expect(next!.label).toMatch(what);
    expect(next).toHaveProperty("cautions", expect.arrayContaining([expect.any(String)]));
  });

  it("blames the pot that was named and no other", () => {
    expect(ask({ code: "pot-scratchy", control: "tone2" }).named.join()).not.toMatch(/pot-scratchy (volume|tone1)/);
  });

  it("leaves the guard alone where the lead crackles: the bad lead stands before what is inside", () => {
    expect(ask({ code: "crackle-on-lead" }).named[0]).toMatch(/^(cable-bad|jack-spring)/);
  });

  it("takes noise that stops on touching the strings for shielding off ground, not for the strings' own ground", () => {
    const { named } = ask({ code: "hum-on-letting-go" }, { code: "hum" });
    expect(named).toContain("wire-open foil,volume.case");
    expect(named).not.toContain("wire-open claw,volume.case");
  });

  it("takes noise that touching does not stop for the strings' ground", () => {
    expect(ask({ code: "touch-no-effect" }).named).toContain("wire-open claw,volume.case");
  });

  it("counts what wears for more on a guard that has worked before", () => {
    const shareOf = (joints: "new" | "old") => {
      const { explanations } = diagnose(build, { readings, symptoms: [{ code: "crackle" }], joints });
      const all = explanations.flatMap(({ faults, prior, sameAs }) => [{ faults, prior }, ...sameAs]);
      return all.find(({ faults }) => faults.length === 1 && faults[0]!.kind === "switch-worn")!.prior;
    };
    expect(shareOf("old")).toBeGreaterThan(2 * shareOf("new"));
  });
});
