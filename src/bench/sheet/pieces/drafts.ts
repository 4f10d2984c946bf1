import type { Connection } from "../../../build-file/connections.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { Reach } from "../wire/reach.ts";
import { isCase, loosenessOf, partOf } from "./loose-ends.ts";
import { LugSets } from "./lug-sets.ts";
import { type Meeting, meetingsOf } from "./meetings.ts";
import type { Draft, PieceMeans } from "./piece.ts";

function fixedMeans({ means }: Connection): PieceMeans {
  // Between fixed lugs nothing grows: whatever the build calls it, it is a wire.
  return means === "lead" || means === "leg" || means === "inside" ? "wire" : means;
}

/** A bent lug is soldered at the case alone; bent to anything else it is a joint at both ends. */
function fixedDraft(build: Build, connection: Connection): Draft {
  const { number, from, to } = connection;
  const means = fixedMeans(connection);
  const bent = means === "bent lug" && isCase(build, from) !== isCase(build, to);
  const stops = bent && isCase(build, from) ? [to, from] : [from, to];
  return { means, stops, grown: bent, wires: [number] };
}

/** The lug of a meeting that is nearest to where the part's other end goes; else the first that the build names. */
function landingOf(end: string, { lugs }: Meeting, meetings: readonly Meeting[], reach: Reach): string {
  const other = meetings.find(({ ends, lugs: theirs }) =>
    theirs.length > 0 ? ends.some((each) => each !== end && partOf(each) === partOf(end)) : false,
  );
  if (!other || lugs.length === 1) return lugs[0]!;
  const far = (lug: string) => Math.min(...other.lugs.map((each) => reach.straight(lug, each)));
  return lugs.reduce((best, lug) => (far(lug) < far(best) - 1e-9 ? lug : best));
}

/** Wires that serve the further lugs of meetings: a loose end is soldered once, and what else it is to reach gets a wire of its own. */
function furtherWires(meetings: readonly Meeting[], sets: LugSets, reach: Reach): Draft[] {
  const wanted = meetings.flatMap(({ lugs, wires }) =>
    lugs.flatMap((from, index) =>
      lugs.slice(index + 1).map((to) => ({ from, to, wires, length: reach.run(from, to) })),
    ),
  );
  const drafts: Draft[] = [];
  for (const { from, to } of wanted.sort((a, b) => a.length - b.length)) {
    if (sets.areJoined(from, to)) continue;
    sets.join(from, to);
    drafts.push({ means: partOf(from) === partOf(to) ? "jumper" : "wire", stops: [from, to], grown: false, wires: [] });
  }
  return drafts;
}

/**
 * The pieces that a build is made of, with every end where the build has it. Ends that meet no fixed lug are spliced, and the
 * splice goes by the name of the first of them.
 */
export function draftsOf(build: Build, connections: readonly Connection[], reach: Reach): Draft[] {
  const meetings = meetingsOf(build, connections);
  const isLoose = (lug: string) => loosenessOf(build, lug) !== undefined;
  const fixed = connections.filter(({ from, to }) => !isLoose(from) && !isLoose(to));
  const sets = new LugSets();
  for (const { from, to } of fixed) sets.join(from, to);
  const loose = meetings.flatMap((meeting) =>
    meeting.ends.map((end): Draft => {
      const at = meeting.lugs.length > 0 ? landingOf(end, meeting, meetings, reach) : meeting.ends[0]!;
      return { means: loosenessOf(build, end)!, stops: [end, at], grown: true, wires: meeting.wires };
    }),
  );
  const soldered = fixed.filter(({ means }) => means !== "inside").map((connection) => fixedDraft(build, connection));
  return [...loose, ...soldered, ...furtherWires(meetings, sets, reach)];
}
