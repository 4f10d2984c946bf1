import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { auditHarness } from "../harness/audit-harness.ts";
import { AuditContext, type Rule } from "./context.ts";
import { idleControls, positionsWithoutTone } from "./controls/idle-controls.ts";
import { toneLugsThatTouch } from "./controls/tone-lugs.ts";
import {
  backwardTones,
  backwardVolumes,
  volumesThatMuteEachOther,
  volumesThatNeverSilence,
} from "./controls/volumes.ts";
import { dimmingMetal } from "./dimming-metal.ts";
import { type Finding, finding } from "./finding.ts";
import type { Severity } from "./finding-codes.ts";
import { twoGroundPaths } from "./ground-paths.ts";
import { humWhereCancellingIsExpected } from "./hum-rules.ts";
import { findJackSwap, jackUnwired } from "./jack.ts";
import { unusualLoads } from "./load.ts";
import { metalToPart } from "./metal-on-lead.ts";
import { coilsOutOfPhase, pairsOutOfPhase } from "./phase.ts";
import { potCases } from "./pot-cases.ts";
import { silentPickups, unconnectedParts } from "./reach.ts";
import { shielding } from "./shielding.ts";
import { silence } from "./silence.ts";
import { strings } from "./strings-ground.ts";
import { unusualCaps } from "./values/cap-values.ts";
import { unusualPots } from "./values/pot-values.ts";

export type { Finding } from "./finding.ts";
export { FINDING_CODES, type FindingCode, type Severity } from "./finding-codes.ts";

/** Rules that need no pot moved. */
const WIRING_RULES: readonly Rule[] = [
  jackUnwired,
  silence,
  silentPickups,
  unconnectedParts,
  potCases,
  strings,
  shielding,
  metalToPart,
  pairsOutOfPhase,
  coilsOutOfPhase,
  humWhereCancellingIsExpected,
  unusualCaps,
  unusualPots,
  dimmingMetal,
  twoGroundPaths,
  auditLimits,
];

/** Rules that turn every pot and throw every switch. */
const CONTROL_RULES: readonly Rule[] = [
  idleControls,
  positionsWithoutTone,
  backwardVolumes,
  backwardTones,
  volumesThatNeverSilence,
  volumesThatMuteEachOther,
  toneLugsThatTouch,
  unusualLoads,
];

/** Says so where the build is too large to be tried in full. */
function auditLimits({ effort, jack }: AuditContext): Finding[] {
  if (!effort.isLimited) return [];
  return [
    finding({
      code: "audit-limited",
      lugs: [`${jack}.tip`],
      message: `The build is too large to try all of: ${effort.triesControls ? "its switches were moved one at a time" : "its pots were not turned"}.`,
      remedy: "Audit a part of the guard at a time, or check the rest with a meter.",
    }),
  ];
}

const RANK: Readonly<Record<Severity, number>> = { fault: 0, warning: 1, note: 2 };

/** A part that is out of the circuit for a fault that names its lugs is not told of a second time. */
function withoutEchoes(findings: readonly Finding[]): Finding[] {
  const named = findings.filter(({ severity }) => severity === "fault").map(({ lugs }) => lugs);
  return findings.filter(
    ({ code, lugs }) =>
      code !== "part-unconnected" || !named.some((others) => lugs.every((lug) => others.includes(lug))),
  );
}

function auditGuard(build: Build): Finding[] {
  const swap = findJackSwap(build);
  const context = new AuditContext(swap?.mended ?? build);
  const rules = context.effort.triesControls ? [...WIRING_RULES, ...CONTROL_RULES] : WIRING_RULES;
  return withoutEchoes([...(swap ? [swap.finding] : []), ...rules.flatMap((rule) => rule(context))]);
}

/**
 * Reads the wiring of a build and says what is wrong with it, worst first. Every rule goes by nets and by what the circuit
 * does, so that another choice of lugs on the same nodes changes nothing but names. A harness without pickups is read as if there
 * were one in every free place.
 */
export function auditBuild(build: Build): Finding[] {
  const hasPickups = partsOfKind(build, "pickup").length > 0;
  const findings = hasPickups ? auditGuard(build) : auditHarness(build, auditGuard);
  return findings.sort((a, b) => RANK[a.severity] - RANK[b.severity]);
}
