import { clause, percent } from "../../bench/faults/answer/summary.ts";
import type { Group } from "../weigh/groups.ts";
import { faultsOf, isContradicted, probabilityOf, type Verdict } from "./verdict.ts";

/** Where the takes leave room for departures beside the drawing, how likely the drawing itself is. */
function drawnWords(best: Group): string {
  const [all, own] = [best.share, best.drawnShare].map((share) => percent(probabilityOf({ share }, best)));
  if (all === own) return `The guard is as drawn as far as these takes tell (${all})`;
  return `The guard is as drawn (${own}), or departs in a way that these takes cannot tell from it (with those ${all})`;
}

function bestWords(best: Group): string {
  const faults = faultsOf(best);
  return faults.length > 0 ? faults.map(({ message }) => clause(message)).join(", and ") : "the guard is as drawn";
}

/**
 * What the answer is and why.
 * @param worst the take that is furthest from the drawing, in words
 * @param contradictions of the meter's readings and the takes, as sentences
 */
export function summaryFor(
  verdict: Verdict,
  groups: readonly Group[],
  worst: string | undefined,
  contradictions: readonly string[] = [],
): string {
  const best = groups[0]!;
  const also = contradictions.map((each) => ` ${each}`).join("");
  const why = worst === undefined ? also : ` ${worst}${also}`;
  const share = percent(probabilityOf(best, best));
  if (verdict === "unexplained" && isContradicted(best))
    return `By the takes alone, ${bestWords(best)}; the meter says otherwise.${why}`;
  if (verdict === "unexplained")
    return `Nothing that was weighed accounts for these takes: more departs from the drawing than two things, a take was made in another setting than said, or the guard is another.${why}`;
  if (verdict === "as-drawn")
    return `${drawnWords(best)}: parts within their tolerances account for all of them.${also}`;
  const others = best.names.length > 1 && !best.isSound ? ", or something that these takes cannot tell from it" : "";
  const how = verdict === "departs" ? "Most likely" : "Perhaps";
  return `${how} (${share}) ${bestWords(best)}${others}.${why}`;
}
