import type { Build } from "../../../build-file/schema.ts";
import { isCase, isGroundPoint, partOf } from "../pieces/loose-ends.ts";
import { LugSets } from "../pieces/lug-sets.ts";
import { type Draft, solderedStops } from "../pieces/piece.ts";
import type { Reach } from "../wire/reach.ts";
import { POINTS } from "./points.ts";
import type { LandingProblem, OpenEnd, Option, Sitting } from "./problem.ts";

/** An open end, and the draft whose last stop it is. */
export interface DraftEnd extends OpenEnd {
  readonly draft: Draft;
}

export function sittingOf(build: Build, { stops }: Pick<Draft, "stops">): Sitting {
  return stops.some((stop) => build.parts[partOf(stop)]!.kind === "pickup") ? 2 : 1;
}

/** A place that any ground may go to instead of another such place of its net. */
function takesGrounds(build: Build, lug: string): boolean {
  return isCase(build, lug) || isGroundPoint(build, lug);
}

/** The wires that leave the guard, to jack, claw or shield, with their end on the guard last. */
function leavingEnd(build: Build, { means, stops, grown }: Draft): { away: string; at: string } | undefined {
  if (grown || means === "jumper" || stops.length !== 2) return undefined;
  const away = stops.find((stop) => {
    const part = build.parts[partOf(stop)]!;
    return part.kind === "jack" || (part.kind === "terminal" && !isGroundPoint(build, stop));
  });
  const at = stops.find((stop) => takesGrounds(build, stop));
  return away === undefined || at === undefined ? undefined : { away, at };
}

/** The lugs of every other fixed joint that are joined without one draft. */
function joinedWithout(drafts: readonly Draft[], left: Draft): LugSets {
  const sets = new LugSets();
  for (const draft of drafts)
    if (draft !== left) for (const stop of draft.stops.slice(1)) sets.join(draft.stops[0]!, stop);
  return sets;
}

function optionsFrom(lugs: readonly string[], built: string, away: string, reach: Reach): Option[] {
  const length = (lug: string) => reach.run(away, lug);
  const nearest = Math.min(...lugs.map(length));
  return lugs.map((lug) => ({
    lug,
    points: (lug === built ? 0 : POINTS.moved) + Math.round((length(lug) - nearest) * POINTS.metre),
  }));
}

/**
 * The ends whose place is open: a lead on a case or ground point may go to any other of its net, and so may what comes from jack,
 * claw or shield, as long as the net stays one.
 */
export function openEndsOf(build: Build, drafts: readonly Draft[], reach: Reach): DraftEnd[] {
  const places = [...new Set(drafts.flatMap(solderedStops))].filter((stop) => takesGrounds(build, stop));
  return drafts.flatMap((draft): DraftEnd[] => {
    const isLead = draft.means === "lead";
    const leaving = leavingEnd(build, draft);
    const at = isLead ? draft.stops[1]! : leaving?.at;
    if (at === undefined || !takesGrounds(build, at)) return [];
    const away = isLead ? draft.stops[0]! : leaving!.away;
    const sets = joinedWithout(drafts, draft);
    // Its own side of the net must hold no other such place, or moving the end would part them.
    if (!isLead && places.some((place) => sets.areJoined(place, away))) return [];
    const lugs = places.filter((place) => place === at || sets.areJoined(place, at));
    if (lugs.length < 2) return [];
    const options = optionsFrom(lugs, at, away, reach);
    return [{ draft, name: away, sitting: sittingOf(build, draft), options }];
  });
}

/** What is to be decided, with every other end counted where it is. */
export function landingProblem(
  build: Build,
  drafts: readonly Draft[],
  open: readonly DraftEnd[],
  maxEnds: number,
): LandingProblem {
  const settled = new Map<string, [number, number]>();
  for (const draft of drafts) {
    const openEnd = open.find((each) => each.draft === draft);
    for (const stop of solderedStops(draft)) {
      if (openEnd && stop !== openEnd.name) continue;
      const ends = settled.get(stop) ?? [0, 0];
      ends[sittingOf(build, draft) - 1]! += 1;
      settled.set(stop, ends);
    }
  }
  return { open, settled, maxEnds, isCase: (lug) => isCase(build, lug) };
}
