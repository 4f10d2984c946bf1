import { connectionsOf } from "../../../src/build-file/connections.ts";
import type { Rewiring } from "../../../src/build-file/rewire/rewire.ts";
import type { Step } from "../../../src/build-file/rewire/steps.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { DisjointSets } from "../../../src/disjoint-sets.ts";
import { Wiring } from "../../../src/wiring/nets.ts";

interface Lying {
  wire: number | null;
  lugs: [string, string];
  /** Ends that hold: soldered, or grown from their lug. */
  holds: [boolean, boolean];
  grown: [boolean, boolean];
}

/** Groups of lugs that wires join, one line each, sorted; lugs alone are left out. */
export function netsOf(build: Build): string[] {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const groups = new Map<number, string[]>();
  for (const [index, { name }] of wiring.lugs.lugs.entries())
    groups.set(netOfLug[index]!, [...(groups.get(netOfLug[index]!) ?? []), name]);
  return [...groups.values()]
    .filter(({ length }) => length > 1)
    .map((names) => names.sort().join(" "))
    .sort();
}

/** A guard on the bench, on which steps are done one by one; it complains of a step that cannot be done. */
export class BenchTop {
  readonly #wires: Lying[];
  readonly #wantedName: ReadonlyMap<string, string>;
  /** By the index of the step that made its first end. */
  readonly #halfMade = new Map<number, Lying>();

  constructor(from: Build, { parts }: Rewiring) {
    this.#wantedName = new Map(parts.stay.map((part) => [part.from, part.to]));
    this.#wires = connectionsOf(from).map(({ number, from: a, to: b, grownFrom }) => ({
      wire: number - 1,
      lugs: [this.#asFound(a), this.#asFound(b)],
      holds: [true, true],
      grown: [grownFrom.includes(a), grownFrom.includes(b)],
    }));
  }

  /** A lug by its name as wanted; one of a part that goes out is marked. */
  #asFound(lug: string): string {
    const [part = "", ...local] = lug.split(".");
    const wanted = this.#wantedName.get(part);
    return wanted === undefined ? `old:${lug}` : [wanted, ...local].join(".");
  }

  do(steps: readonly Step[], namesAsFound: Step["do"]): void {
    this.#halfMade.clear();
    for (const [index, step] of steps.entries()) {
      const name = step.do === namesAsFound ? (lug: string) => this.#asFound(lug) : (lug: string) => lug;
      const lugs: [string, string] = [name(step.from), name(step.to)];
      const end = lugs.indexOf(name(step.at));
      if (end < 0) throw new Error(`${step.text} – is at neither end`);
      if (step.do === "open") this.#open(step, lugs, end);
      else this.#make(step, index, lugs, end);
    }
  }

  #open(step: Step, lugs: [string, string], end: number): void {
    const wire = this.#wires.find(
      (each) => each.wire === step.wire && each.holds[end] && each.lugs.join() === lugs.join() && isFast(each, end),
    );
    if (!wire) throw new Error(`${step.text} – there is no such joint`);
    wire.holds[end] = false;
  }

  #make(step: Step, index: number, lugs: [string, string], end: number): void {
    // A wire beside another is found in guards, and comes back on the way home; no other is ever made.
    const isSame = (each: Lying) => step.wire === null || each.wire === step.wire;
    const there = this.#wires.some(
      (each) => each.holds[0] && each.holds[1] && each.lugs.join() === lugs.join() && isSame(each),
    );
    if (there) throw new Error(`${step.text} – is joined already`);
    const other = 1 - end;
    const half = step.partner === null ? undefined : this.#halfMade.get(step.partner);
    const ofWire = step.wire === null ? [] : this.#wires.filter(({ wire }) => wire === step.wire);
    const hanging =
      half ?? ofWire.find(({ holds, lugs: at }) => !holds[end] && holds[other] && at[other] === lugs[other]);
    const splice = ofWire.find(({ grown, lugs: at }) => grown.every(Boolean) && at.join() === lugs.join());
    if (splice) {
      splice.holds = [true, true];
      return;
    }
    if (hanging && !hanging.grown.every(Boolean)) {
      hanging.lugs = lugs;
      hanging.holds[end] = true;
      return;
    }
    // A lead of its own: out of a splice, or one that hung free; else a new wire's first end.
    const grows = step.fate !== "wire";
    const made: Lying = { wire: step.wire, lugs, holds: [end === 0, end === 1], grown: [false, false] };
    made.holds[other] = grows;
    made.grown[other] = grows;
    this.#wires.push(made);
    if (!grows) this.#halfMade.set(index, made);
  }

  /** Nets as they lie, over the lugs of parts that are to be there. */
  nets(): string[] {
    const names = [...new Set(this.#wires.flatMap(({ lugs }) => lugs))].filter((lug) => !lug.startsWith("old:"));
    const sets = new DisjointSets(names.length);
    for (const { lugs, holds } of this.#wires) {
      const [a, b] = lugs.map((lug) => names.indexOf(lug)) as [number, number];
      if (holds[0] && holds[1] && a >= 0 && b >= 0) sets.join(a, b);
    }
    const groups = new Map<number, string[]>();
    for (const [index, name] of names.entries())
      groups.set(sets.find(index), [...(groups.get(sets.find(index)) ?? []), name]);
    return [...groups.values()]
      .filter(({ length }) => length > 1)
      .map((group) => group.sort().join(" "))
      .sort();
  }

  /** Wires that hang at one end from a lug that stays, or tie the guard to a part that should be gone. */
  dangling(): string[] {
    const isOld = (lug: string) => lug.startsWith("old:");
    return this.#wires
      .filter(({ lugs, holds, grown }) => {
        const held = lugs.filter((_, end) => holds[end]);
        if (held.length === 0 || held.every(isOld)) return false;
        if (held.some(isOld)) return true;
        return held.length === 1 && !grown[holds[0] ? 0 : 1];
      })
      .map(({ lugs }) => lugs.join("–"));
  }

  /** Everything that joins two lugs, a line each. */
  joins(): string[] {
    return this.#wires
      .filter(({ holds }) => holds[0] && holds[1])
      .map(({ lugs }) => [...lugs].sort().join("–"))
      .sort();
  }
}

/** Soldered there, not grown; leads twisted together are soldered to each other. */
function isFast({ grown }: Lying, end: number): boolean {
  return !grown[end] || grown.every(Boolean);
}
