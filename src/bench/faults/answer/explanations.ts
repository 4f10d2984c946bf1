import { listed } from "../../../english.ts";
import type { Fault } from "../fault.ts";
import { explains, type Group } from "../hypotheses/groups.ts";
import type { Hypothesis } from "../hypotheses/hypothesis.ts";
import type { Remainder } from "../hypotheses/remainder.ts";
import { FAULT_SHARES } from "../priors/fault-shares.ts";

export interface NamedFault {
  readonly kind: string;
  readonly lugs: readonly string[];
  /** The value in ohms that the readings say the part has, where another value than the build's is what is wrong. */
  readonly ohms?: number;
}

export interface Alternative {
  readonly faults: readonly NamedFault[];
  readonly message: string;
  /** Probability, 0 to 1, before anything was measured or told. */
  readonly prior: number;
}

export interface Explanation extends Alternative {
  /**
   * How well it explains what was told, 0 to 1: the probability that a guard that is so shows readings at least this far from
   * its own (chi-square), times the probability that its symptoms would be told.
   */
  readonly fit: number;
  /** Probability, 0 to 1, that this explanation or one of `sameAs` is the truth; what is missing to 1 is the remainder's. */
  readonly probability: number;
  /** What the meter would show for each reading given, other parts at their nominal values; ohms, null where open. */
  readonly predicted: readonly (number | null)[];
  /** Other explanations that nothing told can tell from this one, the commonest cause first. */
  readonly sameAs: readonly Alternative[];
  /** How many `sameAs` holds, and of which kinds: "6 open connections and 2 broken coils"; empty where there is none. */
  readonly alike: string;
}

const MAX_EXPLANATIONS = 20;
const MIN_SHARE = 1e-6;

export const SOUND_MESSAGE = "Nothing is wrong: this is what it should read.";

/** Faults as an answer names them; none of them is a fault of kind "none". */
export function namedFaults(faults: readonly Fault[]): NamedFault[] {
  if (faults.length === 0) return [{ kind: "none", lugs: [] }];
  return faults.map(({ kind, lugs, ohms }) => ({ kind, lugs, ...(ohms === undefined ? {} : { ohms }) }));
}

export function alternative({ faults, logPrior }: Pick<Hypothesis, "faults" | "logPrior">): Alternative {
  const message = faults.length === 0 ? SOUND_MESSAGE : faults.map((fault) => fault.message).join(" And: ");
  return { faults: namedFaults(faults), message, prior: Math.exp(logPrior) };
}

const PAIR = ["pair of faults", "pairs of faults"] as const;
const SOUND = ["guard with nothing wrong", "guards with nothing wrong"] as const;

function wordsFor({ faults }: Pick<Hypothesis, "faults">): readonly [string, string] {
  const [first] = faults;
  return faults.length > 1 ? PAIR : first ? FAULT_SHARES[first.kind].words : SOUND;
}

/** "6 open connections, 1 broken coil and 9 pairs of faults". */
export function kindsIn(members: readonly Pick<Hypothesis, "faults">[]): string {
  const counts = new Map<readonly [string, string], number>();
  for (const member of members) {
    const words = wordsFor(member);
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return listed([...counts].map(([[one, several], count]) => `${count} ${count === 1 ? one : several}`));
}

/** The leading groups in the words of an answer; what the remainder takes is no explanation's. */
export function explanationsOf(groups: readonly Group[], { hidden, outside }: Remainder): Explanation[] {
  const total = groups.filter(explains).reduce((sum, { share }) => sum + share, 0);
  return groups
    .filter(({ share }, index) => index < 3 || (index < MAX_EXPLANATIONS && share >= MIN_SHARE))
    .map((group) => {
      const [first, ...others] = group.members;
      const { evidence, logSymptoms, prediction } = first!;
      return {
        ...alternative(first!),
        fit: evidence.fit * Math.exp(logSymptoms),
        probability: explains(group) && total > 0 ? (group.share / total) * (1 - hidden - outside) : 0,
        predicted: Array.from(prediction.ohms, (ohms) => (Number.isFinite(ohms) ? ohms : null)),
        sameAs: others.map(alternative),
        alike: kindsIn(others),
      };
    });
}
