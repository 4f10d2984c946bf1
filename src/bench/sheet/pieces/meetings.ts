import type { Connection } from "../../../build-file/connections.ts";
import type { Build } from "../../../build-file/schema.ts";
import { DisjointSets } from "../../../disjoint-sets.ts";
import { loosenessOf } from "./loose-ends.ts";

/** Loose ends that the build joins to each other, and the fixed lugs that it joins them to. */
export interface Meeting {
  readonly ends: readonly string[];
  /** None: the ends are spliced. */
  readonly lugs: readonly string[];
  /** Numbers of the build's wires among them. */
  readonly wires: readonly number[];
}

/** The meetings of loose ends, in the build's order. What is joined inside a part is no meeting. */
export function meetingsOf(build: Build, connections: readonly Connection[]): Meeting[] {
  const soldered = connections.filter(({ means }) => means !== "inside");
  const isLoose = (lug: string) => loosenessOf(build, lug) !== undefined;
  const ends = [...new Set(soldered.flatMap(({ from, to }) => [from, to]).filter(isLoose))];
  const at = new Map(ends.map((end, index) => [end, index]));
  const sets = new DisjointSets(ends.length);
  for (const { from, to } of soldered) if (isLoose(from) && isLoose(to)) sets.join(at.get(from)!, at.get(to)!);
  const { labels, count } = sets.labels();
  const meetings = Array.from({ length: count }, () => ({
    ends: [] as string[],
    lugs: new Set<string>(),
    wires: [] as number[],
  }));
  for (const [index, end] of ends.entries()) meetings[labels[index]!]!.ends.push(end);
  for (const { number, from, to } of soldered) {
    const loose = [from, to].find(isLoose);
    if (loose === undefined) continue;
    const meeting = meetings[labels[at.get(loose)!]!]!;
    meeting.wires.push(number);
    for (const lug of [from, to]) if (!isLoose(lug)) meeting.lugs.add(lug);
  }
  return meetings.map(({ ends: loose, lugs, wires }) => ({ ends: loose, lugs: [...lugs], wires }));
}
