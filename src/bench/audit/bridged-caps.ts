import { trackLugs } from "../../build-file/lug-names.ts";
import { listed } from "../../english.ts";
import type { AuditContext, State } from "./context.ts";
import { type Finding, finding } from "./finding.ts";

/** A tone pot that passes direct current, and where. */
export interface LeakyTone {
  readonly tone: string;
  readonly states: readonly State[];
}

/** The lug of a tone that lies on the one point where both legs of a cap are. */
function lugOnCap(context: AuditContext, cap: string, tone: string): string | undefined {
  const netOf = (lug: string) => context.wired.netOfLug[context.index(lug)];
  if (netOf(`${cap}.a`) !== netOf(`${cap}.b`)) return undefined;
  return trackLugs(tone).find((lug) => netOf(lug) === netOf(`${cap}.a`));
}

/** Caps with both legs on one point, each told once with every tone that has lost its cap by it. */
export function bridgedCaps(
  context: AuditContext,
  leaky: readonly LeakyTone[],
): { readonly findings: readonly Finding[]; readonly tones: ReadonlySet<string> } {
  const told = new Set<string>();
  const findings = context.partsOf("cap").flatMap(([cap]) => {
    const bereft = leaky.flatMap(({ tone, states }) => {
      const lug = told.has(tone) ? undefined : lugOnCap(context, cap, tone);
      return lug === undefined ? [] : [{ tone, states, lug }];
    });
    if (bereft.length === 0) return [];
    for (const { tone } of bereft) told.add(tone);
    const lugs = bereft.map(({ lug }) => lug);
    const several = bereft.length > 1;
    return finding({
      code: "unused-lug-touches",
      lugs: [...lugs, `${cap}.a`, `${cap}.b`],
      settings: context.settingsOf([...new Set(bereft.flatMap(({ states }) => states))]),
      message: `${cap} is bridged: one of its legs, or ${listed(lugs).replace(" and ", " or ")}, touches the case. ${listed(bereft.map(({ tone }) => tone))} ${several ? "pass direct current and work as second volumes" : "passes direct current and works as a second volume"}.`,
      remedy: `Bend the leg and ${listed(lugs)} clear of the case, and put sleeving on the leg.`,
    });
  });
  return { findings, tones: told };
}
