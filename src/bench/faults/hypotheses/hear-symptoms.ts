import type { Witness } from "../../symptoms/witness.ts";
import { byScore, type Hypothesis, score } from "./hypothesis.ts";

/** Hypotheses further behind the best by readings than this, in nats, cannot be brought back by what was heard. */
const HOPELESS = 40;
const CHECK_EVERY = 20;

/**
 * The same hypotheses with what was heard weighed too; those out of the running keep the worst that any of the others got.
 * @param ordered best first
 * @param affordable how many settings may be listened to
 */
export function hearSymptoms(
  ordered: Hypothesis[],
  witness: Witness,
  affordable: number,
  checkpoint: () => void,
): Hypothesis[] {
  const most = Math.floor(affordable / Math.max(1, witness.listenings));
  if (witness.isSilent || ordered.length === 0) return ordered;
  const best = score(ordered[0]!);
  let worst = 0;
  const heard = ordered.map((hypothesis, index) => {
    if (index >= most || score(hypothesis) < best - HOPELESS) return { ...hypothesis, logSymptoms: worst };
    if (index % CHECK_EVERY === 0) checkpoint();
    const logSymptoms = witness.logChance(hypothesis);
    worst = Math.min(worst, logSymptoms);
    return { ...hypothesis, logSymptoms };
  });
  return heard.sort(byScore);
}
