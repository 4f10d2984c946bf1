import { expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";

const cable = { length: "3m", capacitance: "100p" };

test.each(["cases", "star"] as const)(
  "with grounds on %s, every case, shield and terminal is on the jack's sleeve",
  (grounds) => {
    const { plan } = PLAN_PRESETS.find((preset) => preset.id === "hss-push-pull-split")!;
    const findings = auditBuild(readBuild({ presolder: 1, plan: { ...plan, grounds }, cable }));
    expect(findings.filter((finding) => finding.severity !== "note")).toEqual([]);
  },
);
