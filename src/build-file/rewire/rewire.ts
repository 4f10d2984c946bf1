import { DisjointSets } from "../../disjoint-sets.ts";
import { connectionsOf } from "../connections.ts";
import type { Build } from "../schema.ts";
import { type LugNumber, LugSpace } from "./lug-space.ts";
import { matchParts, type PartMatch } from "./match-parts.ts";
import { type Move, type Moves, MoveWriter } from "./moves.ts";
import { type Ordering, orderMoves, placeOf } from "./order-moves.ts";
import { ownLegs } from "./own-legs.ts";
import { type PartChanges, partChanges } from "./part-changes.ts";
import { JoinPlanner } from "./plan-joins.ts";
import { resultBuild } from "./result-build.ts";
import { between, sortStrands } from "./sort-strands.ts";
import { type Step, StepWriter } from "./steps.ts";
import { isSplice, type Strand, strandsOf } from "./strands.ts";

export interface KeptWire {
  /** Index in the wires of the guard as found. */
  readonly wire: number;
  /** Its lugs as the guard as wanted calls them. */
  readonly from: string;
  readonly to: string;
  readonly means: string;
}

export interface Rewiring {
  /** One joint each, in an order that heats a lug once where it can be. */
  readonly steps: readonly Step[];
  /** The way back to the guard as found: the same joints undone, the last first. */
  readonly home: readonly Step[];
  readonly kept: readonly KeptWire[];
  /** Wires, by index as found, that go out untouched between parts that go out. */
  readonly leaving: readonly number[];
  readonly parts: PartChanges;
  /** The guard after the steps: its nets are those wanted, its routes need not be. */
  readonly result: Build;
}

/** The nets of the guard as wanted, by wires alone; a lug whose part goes out has none. */
function wantedNets(space: LugSpace, wanted: readonly Strand[]): (lug: LugNumber) => number | undefined {
  const sets = new DisjointSets(space.size);
  for (const { lugs } of wanted) sets.join(lugs[0], lugs[1]);
  return (lug) => (space.goesOut(lug) ? undefined : sets.find(lug));
}

function orderingOf(space: LugSpace, { replaces }: PartMatch, moves: readonly Move[]): Ordering {
  const foundPart = (lug: LugNumber) => space.foundName(lug).split(".")[0]!;
  const wantedPart = (lug: LugNumber) => space.wantedName(lug).split(".")[0]!;
  const opens = moves.filter((move) => move.do === "open");
  /** What holds the part in place that makes room for the lug. */
  const holding = (lug: LugNumber) => {
    const old = space.comesIn(lug) ? replaces.get(wantedPart(lug)) : undefined;
    if (old === undefined) return [];
    return opens.filter(({ strand }) => strand.lugs.some((at) => space.goesOut(at) && foundPart(at) === old));
  };
  const lugs = [...Array(space.size).keys()];
  return {
    places: [...lugs.filter((lug) => space.goesOut(lug)), ...lugs.filter((lug) => !space.goesOut(lug))],
    partOf: (lug) => (space.goesOut(lug) ? `${foundPart(lug)} goes out` : wantedPart(lug)),
    after: (move) => [...opens.filter(({ key }) => key === move.key), ...holding(placeOf(move))],
  };
}

/** Strands joined inside a part that comes in, which nobody has to solder. */
function comingInside(space: LugSpace, wanted: readonly Strand[]): Strand[] {
  const partOf = (lug: LugNumber) => space.wantedName(lug).split(".")[0];
  return wanted.filter(({ means, lugs: [a, b] }) => means === "inside" && space.comesIn(a) && partOf(a) === partOf(b));
}

/** So many loops are gone through with all their combinations; customary guards have none. */
const MOST_LOOPS = 4;

/** Splices whose lugs the other strands join as well: opened, each sets two leads free for the price of one joint. */
function splicesInLoops(size: number, kept: readonly Strand[]): Strand[] {
  return kept.filter(isSplice).filter((splice) => {
    const sets = new DisjointSets(size);
    for (const { lugs } of kept.filter((strand) => strand !== splice)) sets.join(lugs[0], lugs[1]);
    return sets.find(splice.lugs[0]) === sets.find(splice.lugs[1]);
  });
}

function subsetsOf<T extends object>(items: readonly T[]): T[][] {
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  return subsetsOf(rest).flatMap((subset) => [subset, [first, ...subset]]);
}

/**
 * From a guard as found to a guard as wanted with the fewest joints opened and made. What is wanted are its nets: a wire that
 * lies inside one stays, one that joins what must not meet is moved at one end to where a join is lacking, and only what then
 * remains takes legs, leads and new wires.
 */
export function rewire(from: Build, to: Build): Rewiring {
  const match = matchParts(from, to);
  const space = new LugSpace(from, to, match);
  const found = strandsOf(connectionsOf(from), (lug) => space.ofFound(lug));
  const wanted = strandsOf(connectionsOf(to), (lug) => space.ofWanted(lug));
  const netOf = wantedNets(space, wanted);
  const sorted = sortStrands(found, netOf);
  const inside = comingInside(space, wanted);
  const legs = ownLegs(to, space, [...found, ...inside], wanted);
  const loops = splicesInLoops(space.size, sorted.kept).slice(0, MOST_LOOPS);
  const [{ kept, moves, made }] = subsetsOf(loops)
    .map((opened) => {
      const staying = sorted.kept.filter((strand) => !opened.includes(strand));
      const misplaced = [...sorted.misplaced, ...opened.map(between)];
      const joined = [...staying, ...inside].map(({ lugs }) => lugs);
      const joins = new JoinPlanner({ size: space.size, netOf, wanted, joined, misplaced, legs }).plan();
      return { kept: staying, ...new MoveWriter(to, space).write(misplaced, joins) };
    })
    .sort((a, b) => a.moves.length - b.moves.length) as [Moves & { kept: Strand[] }];
  const ordered = orderMoves(moves, orderingOf(space, match, moves));
  const writer = new StepWriter(from, to, space);
  return {
    steps: writer.there(ordered),
    home: writer.home(ordered),
    kept: kept.map(({ wire, lugs: [a, b], means }) => ({
      wire,
      from: space.wantedName(a),
      to: space.wantedName(b),
      means,
    })),
    leaving: sorted.leaving.map(({ wire }) => wire),
    parts: partChanges(from, to, match),
    result: resultBuild(from, to, match, space, { kept, made, inside }),
  };
}
