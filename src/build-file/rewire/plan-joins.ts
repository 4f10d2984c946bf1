import { DisjointSets } from "../../disjoint-sets.ts";
import type { WireMeans } from "../wire-means.ts";
import type { LugNumber } from "./lug-space.ts";
import type { OwnLeg } from "./own-legs.ts";
import { type Lack, shareWires } from "./share-wires.ts";
import type { Misplaced, Use } from "./sort-strands.ts";
import type { Strand } from "./strands.ts";

/** Something that is fast at one lug and can be soldered to another of its net. */
export interface Source {
  readonly lug: LugNumber;
  readonly means: WireMeans;
  readonly misplaced?: Misplaced;
  readonly use?: Use;
  readonly reaches?: LugNumber;
}

/** A join to make; `route` is the strand of the guard as wanted that it takes after. */
export interface Join {
  readonly source?: Source;
  readonly lugs: readonly [LugNumber, LugNumber];
  readonly route: Strand | undefined;
}

export interface JoinTask {
  readonly size: number;
  readonly netOf: (lug: LugNumber) => number | undefined;
  /** Strands of the guard as wanted. */
  readonly wanted: readonly Strand[];
  /** Pairs of lugs that are joined whatever is done. */
  readonly joined: readonly (readonly [LugNumber, LugNumber])[];
  readonly misplaced: readonly Misplaced[];
  readonly legs: readonly OwnLeg[];
}

/** The fewest joints for all the joins that the nets as wanted lack: with wires to be moved, then legs and leads, then new wires. */
export class JoinPlanner {
  readonly #task: JoinTask;
  readonly #sets: DisjointSets;
  readonly #routesAt = new Map<LugNumber, Strand[]>();
  readonly #joins: Join[] = [];

  constructor(task: JoinTask) {
    this.#task = task;
    this.#sets = new DisjointSets(task.size);
    for (const [a, b] of task.joined) this.#sets.join(a, b);
    for (const strand of task.wanted)
      for (const lug of strand.lugs) this.#routesAt.set(lug, [...(this.#routesAt.get(lug) ?? []), strand]);
  }

  plan(): Join[] {
    const routes = groupedBy(this.#task.wanted, ({ lugs }) => this.#task.netOf(lugs[0])!);
    const needs = new Map([...routes].map(([net, ofNet]) => [net, this.#joinsLacking(ofNet)]));
    const cheap = groupedBy(this.#cheapSources(), ({ lug }) => this.#task.netOf(lug)!);
    const chosen = (net: number, most: number) => this.#choose(cheap.get(net) ?? [], most);
    const lacks = [...needs].flatMap(([net, need]): Lack[] => {
      const bySpare = chosen(net, need).length;
      return Array.from({ length: need }, (_, index) => ({ net, saves: index < need - bySpare ? 2 : 1 }));
    });
    const moved = groupedBy(this.#share(lacks), ({ lug }) => this.#task.netOf(lug)!);
    for (const [net, ofNet] of routes) {
      const movers = moved.get(net) ?? [];
      this.#joinNet([...chosen(net, needs.get(net)! - movers.length), ...movers], ofNet);
    }
    return this.#joins;
  }

  #joinsLacking(routes: readonly Strand[]): number {
    const sets = new DisjointSets(this.#sets);
    return routes.filter(({ lugs: [a, b] }) => {
      if (sets.find(a) === sets.find(b)) return false;
      sets.join(a, b);
      return true;
    }).length;
  }

  /** Whatever makes a join at the price of one joint. */
  #cheapSources(): Source[] {
    const sources: Source[] = [
      ...this.#task.legs,
      ...this.#task.misplaced
        .filter(({ free }) => !free)
        .flatMap((misplaced) =>
          misplaced.uses.map((use) => ({
            lug: misplaced.strand.lugs[use.stays],
            means: misplaced.strand.means,
            misplaced,
            use,
          })),
        ),
    ];
    return sources
      .filter(({ lug, reaches }) => reaches === undefined || this.#task.netOf(lug) === this.#task.netOf(reaches))
      .sort((a, b) => Number(this.#hasRoute(b)) - Number(this.#hasRoute(a)));
  }

  /** Whether the guard as wanted leads it from its lug as it would go. */
  #hasRoute({ lug, means, reaches }: Source): boolean {
    return (this.#routesAt.get(lug) ?? []).some(({ lugs, grown, means: wanted }) => {
      if (reaches !== undefined) return wanted === means && lugs.includes(reaches);
      return lugs.some((at, end) => at === lug && (grown[end] || !(means === "lead" || means === "leg")));
    });
  }

  /** As many of the sources as can serve at once, those with a route of their own first. */
  #choose(sources: readonly Source[], most: number): Source[] {
    const bent = new DisjointSets(this.#sets);
    const chosen: Source[] = [];
    for (const source of sources) {
      if (chosen.length === most) break;
      if (source.reaches !== undefined) {
        if (bent.find(source.lug) === bent.find(source.reaches)) continue;
        bent.join(source.lug, source.reaches);
      }
      chosen.push(source);
    }
    return chosen;
  }

  /** Wires to be moved, each at the end that stays. */
  #share(lacks: readonly Lack[]): Source[] {
    const free = this.#task.misplaced.filter((misplaced) => misplaced.free);
    const sources = free.map((misplaced) =>
      misplaced.uses
        .map((use) => ({ lug: misplaced.strand.lugs[use.stays], means: misplaced.strand.means, misplaced, use }))
        .sort((a, b) => Number(this.#hasRoute(b)) - Number(this.#hasRoute(a))),
    );
    const serves = shareWires(
      lacks,
      sources.map((uses) => uses.map(({ lug }) => this.#task.netOf(lug)!)),
    );
    return serves.flatMap((net, wire) => sources[wire]!.filter(({ lug }) => this.#task.netOf(lug) === net));
  }

  #joinNet(sources: readonly Source[], routes: readonly Strand[]): void {
    const rest: Source[] = [];
    // A lug reaches only its own case, so that nothing else must have joined the two before.
    for (const source of sources) {
      if (source.reaches === undefined) rest.push(source);
      else this.#join({ source, lugs: [source.lug, source.reaches], route: undefined });
    }
    const later = rest.filter((source) => {
      const route = (this.#routesAt.get(source.lug) ?? []).find((strand) => this.#isApart(strand));
      if (route) this.#join({ source, lugs: [source.lug, otherLug(route, source.lug)], route });
      return !route;
    });
    for (const source of later) {
      // There is one, as the routes join the whole net.
      const route = routes.find(
        (strand) => this.#isApart(strand) && strand.lugs.some((lug) => this.#meets(lug, source.lug)),
      )!;
      const target = route.lugs.find((lug) => !this.#meets(lug, source.lug))!;
      this.#join({ source, lugs: [source.lug, target], route });
    }
    for (const route of routes) if (this.#isApart(route)) this.#join({ lugs: route.lugs, route });
  }

  #join(join: Join): void {
    this.#joins.push(join);
    this.#sets.join(join.lugs[0], join.lugs[1]);
  }

  #meets(a: LugNumber, b: LugNumber): boolean {
    return this.#sets.find(a) === this.#sets.find(b);
  }

  #isApart({ lugs: [a, b] }: Strand): boolean {
    return !this.#meets(a, b);
  }
}

function groupedBy<T, Key>(items: readonly T[], keyOf: (item: T) => Key): Map<Key, T[]> {
  const groups = new Map<Key, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

function otherLug({ lugs }: Strand, lug: LugNumber): LugNumber {
  return lugs[0] === lug ? lugs[1] : lugs[0];
}
