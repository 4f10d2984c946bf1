import { connectionsOf } from "../../../build-file/connections.ts";
import type { Build } from "../../../build-file/schema.ts";
import { landingProblem, openEndsOf } from "../landing/open-ends.ts";
import type { Landing } from "../landing/problem.ts";
import { searchLanding } from "../landing/search.ts";
import { thinOut } from "../landing/thin-out.ts";
import type { Reach } from "../wire/reach.ts";
import { draftsOf } from "./drafts.ts";
import type { Draft, Piece } from "./piece.ts";
import { runOn } from "./run-on.ts";

export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly landing: Landing;
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
  const landing = land(build, drafts, maxEnds, reach);
  const thinned = thinOut(build, runOn(build, drafts, reach), reach, maxEnds);
  return { pieces: thinned.map((draft, index) => ({ ...draft, number: index + 1 })), landing };
}
