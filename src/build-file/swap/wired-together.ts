import { DisjointSets } from "../../disjoint-sets.ts";
import type { BuildInput } from "../schema.ts";

export type WireInput = BuildInput["wires"][number];

export function endsOf(wire: WireInput): readonly [from: string, to: string] {
  return "from" in wire ? [wire.from, wire.to] : wire;
}

/** What wires alone join in a guard as it is written, readable or not. */
export class WiredTogether {
  readonly #indexes = new Map<string, number>();
  readonly #sets: DisjointSets;

  constructor(wires: readonly WireInput[]) {
    for (const end of wires.flatMap(endsOf)) this.#indexes.set(end, this.#indexes.get(end) ?? this.#indexes.size);
    this.#sets = new DisjointSets(this.#indexes.size);
    for (const [from, to] of wires.map(endsOf)) this.#sets.join(this.#indexes.get(from)!, this.#indexes.get(to)!);
  }

  has(a: string, b: string): boolean {
    const [first, second] = [this.#indexes.get(a), this.#indexes.get(b)];
    if (first === undefined || second === undefined) return a === b;
    return this.#sets.find(first) === this.#sets.find(second);
  }
}
