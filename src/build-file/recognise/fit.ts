import { DisjointSets } from "../../disjoint-sets.ts";
import type { Draft } from "../plans/draft.ts";
import type { Guard } from "./guard.ts";
import { type Turn, turnsOf } from "./turns.ts";

/** How far a plan is from a guard, and of two equally far which has more lugs where they belong. */
export interface Distance {
  /** Lugs to join and lugs to part until the nets are the same; 0 where they are. */
  readonly apart: number;
  /** Pairs of lugs, each with itself too, that are together in both. */
  readonly together: number;
}

export const isNearer = (a: Distance, b: Distance): boolean =>
  a.apart < b.apart || (a.apart === b.apart && a.apart > 0 && a.together > b.together);

/** A plan's long form laid onto a guard, part by part. */
export interface Fit extends Distance {
  /** The plan's net of each of the guard's lugs; a lug that the plan has not is a net of its own. */
  readonly planNetOf: Int32Array;
  /** The lug that stands in the plan where this one of the guard does: itself, unless its part is turned round. */
  readonly roleOf: Int32Array;
}

/** Where the plan's lugs are on the guard; ids from the guard's count up for lugs that it has not. */
export class LugMap {
  readonly #guard: Guard;
  readonly #names: ReadonlyMap<string, string>;
  readonly #beyond = new Map<string, number>();

  constructor(guard: Guard, names: ReadonlyMap<string, string>) {
    this.#guard = guard;
    this.#names = names;
  }

  /** The guard's name of a lug of the plan, whether or not the guard has it; undefined where it has not the part. */
  nameOf(lug: string): string | undefined {
    const dot = lug.indexOf(".");
    const part = this.#names.get(dot < 0 ? lug : lug.slice(0, dot));
    return part === undefined ? undefined : dot < 0 ? part : part + lug.slice(dot);
  }

  idOf(lug: string): number {
    const name = this.nameOf(lug);
    const index = name === undefined ? undefined : this.#guard.table.find(name);
    if (index !== undefined) return index;
    const known = this.#beyond.get(lug);
    if (known !== undefined) return known;
    const id = this.#guard.table.lugs.length + this.#beyond.size;
    this.#beyond.set(lug, id);
    return id;
  }

  get size(): number {
    return this.#guard.table.lugs.length + this.#beyond.size;
  }
}

/** Nets of the plan over the guard's lugs, in the guard's numbering of lugs. */
export function planNets(draft: Draft, map: LugMap, lugCount: number): Int32Array {
  const ends = draft.wires.map(({ from, to }) => [map.idOf(from), map.idOf(to)] as const);
  const sets = new DisjointSets(map.size);
  for (const [a, b] of ends) sets.join(a, b);
  return Int32Array.from({ length: lugCount }, (_, lug) => sets.find(lug));
}

/** Counts what parts two divisions of the same lugs into nets. */
class Comparison {
  readonly #plan: Int32Array;
  readonly #guard: Int32Array;
  readonly #sizes: Int32Array;
  readonly #count: number;
  readonly #nets: number;

  constructor(plan: Int32Array, guard: Guard) {
    const numbers = new Map<number, number>();
    for (const root of plan) if (!numbers.has(root)) numbers.set(root, numbers.size);
    this.#plan = plan.map((root) => numbers.get(root)!);
    this.#guard = guard.netOf;
    this.#count = guard.netCount;
    this.#nets = numbers.size + guard.netCount;
    this.#sizes = new Int32Array(numbers.size * guard.netCount);
  }

  #pieceAt(lug: number, role: number): number {
    return this.#plan[role]! * this.#count + this.#guard[lug]!;
  }

  /** @param roleOf which lug of the plan stands at each lug of the guard */
  distance(roleOf: Int32Array): Distance {
    let pieces = 0;
    let together = 0;
    for (let lug = 0; lug < roleOf.length; lug++) {
      const piece = this.#pieceAt(lug, roleOf[lug]!);
      const size = this.#sizes[piece]!;
      this.#sizes[piece] = size + 1;
      if (size === 0) pieces++;
      together += 2 * size + 1;
    }
    for (let lug = 0; lug < roleOf.length; lug++) this.#sizes[this.#pieceAt(lug, roleOf[lug]!)] = 0;
    return { apart: 2 * pieces - this.#nets, together };
  }
}

function turned(
  roleOf: Int32Array<ArrayBuffer>,
  swaps: readonly (readonly [number, number])[],
): Int32Array<ArrayBuffer> {
  const next = roleOf.slice();
  for (const [a, b] of swaps) [next[a], next[b]] = [next[b]!, next[a]!];
  return next;
}

/** Turns every part that may be turned until no turn brings the two nearer. */
function settle(compare: Comparison, turns: readonly Turn[], count: number): Distance & Pick<Fit, "roleOf"> {
  let roleOf = Int32Array.from({ length: count }, (_, lug) => lug);
  let distance = compare.distance(roleOf);
  for (let improved = true; improved && distance.apart > 0; ) {
    improved = false;
    for (const { ways } of turns) {
      for (const swaps of ways) {
        const next = turned(roleOf, swaps);
        const found = compare.distance(next);
        if (!isNearer(found, distance)) continue;
        [roleOf, distance, improved] = [next, found, true];
      }
    }
  }
  return { ...distance, roleOf };
}

/**
 * Lays a plan's long form onto a guard, each part turned as it fits best.
 * @param names the guard's name of each part of the plan
 */
export function fitOnto(guard: Guard, draft: Draft, names: ReadonlyMap<string, string>): Fit {
  const count = guard.table.lugs.length;
  const nets = planNets(draft, new LugMap(guard, names), count);
  const settled = settle(new Comparison(nets, guard), turnsOf(guard, draft, names), count);
  return { ...settled, planNetOf: settled.roleOf.map((role) => nets[role]!) };
}
