import type { Fault } from "../../bench/faults/fault.ts";
import { oddsAgainst } from "../../bench/faults/hypotheses/remainder.ts";
import { chiSquareTail } from "../../bench/faults/likelihood/chi-square.ts";
import { OUTSIDE_SHARE } from "../../bench/faults/priors/fault-shares.ts";
import type { Build } from "../../build-file/schema.ts";
import { adviceFor } from "../departures/advice.ts";
import { titleOf } from "../departures/titles.ts";
import type { Group } from "../weigh/groups.ts";

export type Verdict = "as-drawn" | "departs" | "unclear" | "unexplained";

/** Less likely than this, the takes are not what an answer predicts. */
const LEAST_FIT = 1e-3;
/** As likely as this, an answer is given outright. */
const LIKELY = 0.5;

/** How well a group's best guard accounts for the takes alone, 0 to 1. */
function takesFit({ leader: { weighed } }: Group): number {
  const { chiSquare, degrees } = weighed.fit;
  return chiSquareTail(chiSquare, Math.max(1, Math.round(degrees)));
}

/** The same, and for a meter's readings: the less likely of both. */
export const fitOf = (group: Group): number => Math.min(takesFit(group), group.readingsFit ?? 1);

/** Whether takes have an answer that the meter does not. */
export const isContradicted = (best: Group): boolean => takesFit(best) >= LEAST_FIT && fitOf(best) < LEAST_FIT;

/** That it is none of the answers: a departure that is not among them, or two at once. */
export function outsideOf(best: Group): number {
  const fit = fitOf(best);
  if (fit < LEAST_FIT) return 1;
  const odds = (OUTSIDE_SHARE / (1 - OUTSIDE_SHARE)) * oddsAgainst(Math.max(fit, 1e-12));
  return odds / (1 + odds);
}

/** What is believed of a group, what was not weighed left room for. */
export const probabilityOf = ({ share }: Pick<Group, "share">, best: Group): number => share * (1 - outsideOf(best));

export function verdictOf(groups: readonly Group[]): Verdict {
  const [best] = groups;
  if (fitOf(best!) < LEAST_FIT) return "unexplained";
  if (probabilityOf(best!, best!) < LIKELY) return "unclear";
  return best!.isSound ? "as-drawn" : "departs";
}

/** The faults that a group is told by; none for the guard as drawn. */
export const faultsOf = ({ names, isSound }: Pick<Group, "names" | "isSound">): readonly Fault[] =>
  isSound ? [] : names[0]!.faults;

const uncapitalised = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** Two at once: "Tone capacitor: about 47 nF instead of 22 nF; and bridge humbucker, slug coil: broken winding". */
export function titleFor(build: Build, group: Pick<Group, "names" | "isSound">): string {
  const [first, ...others] = faultsOf(group).map((fault) => titleOf(build, fault));
  return first === undefined ? "As drawn" : [first, ...others.map(uncapitalised)].join("; and ");
}

/** Two leads of a single coil exchanged have the same resistance and the same impedance: neither a meter nor the jack tells them. */
export const AS_DRAWN_NEXT =
  "Nothing need be done for what these takes show. What they cannot is listed below: most of it a meter shows, but not the leads of a single coil exchanged, which a small coil laid over it or taps on its poles do.";

/** Where the plan is not done yet. */
export const asDrawnSoFar = (left: number) =>
  `Nothing departs so far; ${left === 1 ? "one take" : `${left} takes`} of the plan would show what these cannot.`;

export function nextFor(group: Group): string {
  const advice = faultsOf(group).map(adviceFor);
  return advice.length > 0 ? [...new Set(advice)].join(" ") : AS_DRAWN_NEXT;
}

const TITLES: Readonly<Record<Exclude<Verdict, "departs">, string>> = {
  "as-drawn": "As drawn, as far as these takes tell",
  unclear: "Not decided yet",
  unexplained: "Not as drawn, and none of what was weighed",
};

export function verdictTitle(build: Build, verdict: Verdict, best: Group): string {
  if (verdict === "unexplained" && isContradicted(best)) return "Takes and meter contradict each other";
  return verdict === "departs" ? titleFor(build, best) : TITLES[verdict];
}
