import type { Candidate, Named } from "./candidates.ts";
import { logSum } from "./classes.ts";
import type { Weigher } from "./weigher.ts";

/** Guards less far apart than this, as chi-square, are the same to these takes. */
const SAME_CHI_SQUARE = 4;
/** Nor may one of them account for the takes better than the other by more, in nats. */
const SAME_LOG = 3;
/** Further behind the best than this, in nats, an answer is none. */
const HOPELESS = 14;

/**
 * What a departure must account better by than the guard as drawn to be told from it, in nats: the laws of tolerances are only about normal,
 * and one with a value of its own bends to whatever is left of them.
 */
const LEAST_GAIN = { fixed: 4, valued: 7 } as const;

/** What no tolerance bends, such as the sense of a winding, tells apart from here, as chi-square. */
const SAME_EXTRA = 1;

/** Answers that the takes cannot tell apart. */
export interface Group {
  /** The one that accounts for the takes best. */
  readonly leader: Candidate;
  /** All of them; another take may tell them apart. */
  readonly members: readonly Candidate[];
  /** The likeliest first. */
  readonly names: readonly Named[];
  /** Of the belief in all groups. */
  readonly share: number;
  /** Of that belief, what the guard as drawn has of it by itself; 0 where it is not in the group. */
  readonly drawnShare: number;
  readonly isSound: boolean;
  /** How likely a meter's readings are this far off or farther, its parts where the takes have them; left out where nobody asked. */
  readonly readingsFit?: number;
}

/** Whether a departure is one that hardly accounts for more than the drawing does, and for as much. */
function isSlight({ weighed: { departure, fit }, logLikelihood }: Candidate, drawn: Candidate): boolean {
  if (Math.abs(fit.extra - drawn.weighed.fit.extra) > SAME_EXTRA) return false;
  const isValued = departure.freed.length + departure.added.length > 0;
  const gain = logLikelihood - drawn.logLikelihood;
  return gain > -SAME_LOG && gain < (isValued ? LEAST_GAIN.valued : LEAST_GAIN.fixed);
}

/**
 * @param candidates the likeliest first
 * @param slight what is told with the guard as drawn, because there would have to be more of it to show
 */
export function groupsOf(weigher: Weigher, candidates: readonly Candidate[], slight: readonly Named[] = []): Group[] {
  const top = candidates[0]!.score;
  const kept = candidates.filter(({ score }, index) => index < 3 || score > top - HOPELESS);
  const groups: Candidate[][] = [];
  const drawn = kept.find(({ names }) => names.some(({ faults }) => faults.length === 0));
  for (const candidate of [...(drawn ? [drawn] : []), ...kept.filter((each) => each !== drawn)]) {
    const alike = groups.find(
      ([leader]) =>
        (leader === drawn && isSlight(candidate, drawn!)) ||
        (Math.abs(leader!.logLikelihood - candidate.logLikelihood) < SAME_LOG &&
          weigher.apart(leader!.weighed, candidate.weighed) < SAME_CHI_SQUARE),
    );
    if (alike) alike.push(candidate);
    else groups.push([candidate]);
  }
  const weightOf = ({ score }: Candidate) => Math.exp(score - top);
  const total = kept.reduce((sum, each) => sum + weightOf(each), 0);
  return groups
    .map((members): Group => {
      const names = members.flatMap((each) =>
        each.names.map((name) => ({ name, log: name.logPrior + each.logLikelihood })),
      );
      const drawnLog = names.find(({ name }) => name.faults.length === 0)?.log;
      const isSound = drawnLog !== undefined;
      const share = members.reduce((sum, each) => sum + weightOf(each), 0) / total;
      const ordered = names.sort((a, b) => b.log - a.log).map(({ name }) => name);
      return {
        leader: members[0]!,
        members,
        names: isSound ? [...ordered, ...slight] : ordered,
        isSound,
        share,
        drawnShare: isSound ? share * Math.exp(drawnLog - logSum(names.map(({ log }) => log))) : 0,
      };
    })
    .sort((a, b) => b.share - a.share);
}
