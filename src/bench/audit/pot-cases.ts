import { listed } from "../../english.ts";
import type { AuditContext, State } from "./context.ts";
import { liveNets } from "./controls/idle-controls.ts";
import type { Finding } from "./finding.ts";
import { jackUnwired } from "./jack.ts";
import { metalAt, metalFinding, offGround } from "./metal.ts";

function isLiveLug(context: AuditContext, lug: string, states: readonly State[]): boolean {
  return states.some((state) => liveNets(context, state).has(context.netOf(lug, state)));
}

/** Cases of pots that are not on ground. */
export function potCases(context: AuditContext): Finding[] {
  if (jackUnwired(context).length > 0) return [];
  return context.partsOf("pot").flatMap(([name]) => {
    const metal = metalAt(context, `${name}.case`);
    const { off, hot } = offGround(context, metal.lug, context.states);
    if (off.length === 0) return [];
    if (hot.length > 0 && metal.carried.some((lug) => isLiveLug(context, lug, hot))) {
      return metalFinding(context, "case-hot", metal, hot, {
        message: `The case of ${name} is on the hot side${context.whereElse(hot)}: it shares a net with ${listed(metal.carried)}.`,
        remedy: "Take the hot wire off the case, then ground the case.",
      });
    }
    const carries = metal.carried.length > 0;
    return metalFinding(context, "case-ungrounded", metal, off, {
      message: carries
        ? `The case of ${name} has no ground${context.whereElse(off)}, and ${listed(metal.carried)} relies on it.`
        : `The case of ${name} has no ground.`,
      remedy: `Run a wire from the case of ${name} to a grounded case; do not trust the shielding foil for it.`,
      severity: carries ? "fault" : "warning",
    });
  });
}
