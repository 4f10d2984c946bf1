import { describe, expect, it } from "vitest";
import { diagnose } from "../../src/bench/faults/diagnose.ts";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { phaseCheck } from "../../src/bench/phase-check.ts";
import { MAX_PROBES } from "../../src/limits.ts";
import { hugeBuild } from "./huge-build.ts";

describe("a build as large as the door lets in", () => {
  const build = hugeBuild();
  const { readings } = meterReadings(build);

  it("has no more standing readings than a diagnosis may be given", () => {
    expect(readings).toHaveLength(MAX_PROBES);
  });

  it("is diagnosed by its commonest faults, and the answer says so", () => {
    const given = readings.map(({ between, settings, ohms }) => ({ between, settings, ohms }));
    const { considered } = diagnose(build, { readings: given, symptoms: [{ code: "weak" }] });
    expect(considered.ofSingles).toBeGreaterThan(10_000);
    expect(considered.singles).toBeLessThan(considered.ofSingles);
  });

  it("has its phase checked in as many settings as can be afforded", () => {
    expect(phaseCheck(build).pickups).toHaveLength(50);
  });
});
