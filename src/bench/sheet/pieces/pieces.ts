import { connectionsOf } from "../../../build-file/connections.ts";
import type { Build } from "../../../build-file/schema.ts";
import { landingProblem, openEndsOf } from "../landing/open-ends.ts";
import type { Landing } from "../landing/problem.ts";
import { searchLanding } from "../landing/search.ts";
import { thinOut } from "../landing/thin-out.ts";
import type { Reach } from "../wire/reach.ts";
import { draftsOf } from "./drafts.ts";
import { isCase } from "./loose-ends.ts";
import type { Draft, Piece } from "./piece.ts";
import { runOn } from "./run-on.ts";

export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly landing: Landing;
  /** How many ends every joint would have if all were where the build has them: the more of its two sittings. */
  readonly crowds: ReadonlyMap<string, number>;
}

function crowdsOf(build: Build, drafts: readonly Draft[]): Map<string, number> {
  const { settled } = landingProblem(build, drafts, [], 0);
  return new Map(
    [...settled].map(([place, ends]) => [place, isCase(build, place) ? Math.max(...ends) : ends[0] + ends[1]]),
  );
}

/** Puts the ends whose place was open where the search has them. */
function land(build: Build, drafts: readonly Draft[], maxEnds: number, reach: Reach): Landing {
  const open = openEndsOf(build, drafts, reach);
  const landing = searchLanding(landingProblem(build, drafts, open, maxEnds));
  for (const [index, { draft, name, options }] of open.entries()) {
    const { lug } = options[landing.choice[index]!]!;
    const built = draft.stops.find((stop) => stop !== name)!;
    if (lug === built) continue;
    draft.stops = draft.stops.map((stop) => (stop === name ? stop : lug));
    draft.insteadOf = built;
  }
  return landing;
}

/**
 * The physical pieces of a build: the same nets, each loose end soldered once, and no more than `maxEnds` to a joint as far as
 * the nets leave a way.
 */
export function piecesOf(build: Build, reach: Reach, maxEnds: number): Pieces {
  const drafts = draftsOf(build, connectionsOf(build), reach);
  const crowds = crowdsOf(build, drafts);
  const landing = land(build, drafts, maxEnds, reach);
  // Bared ends that run on leave fewer ends to thin out, and thinning out brings neighbours together.
  const thinned = thinOut(build, runOn(build, drafts, reach), reach, maxEnds);
  const pieces = runOn(build, thinned, reach).map((draft, index) => ({ ...draft, number: index + 1 }));
  return { pieces, landing, crowds };
}
