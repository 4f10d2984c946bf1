import { DisjointSets } from "../../disjoint-sets.ts";
import type { LugTable } from "../lugs.ts";
import type { Draft } from "../plans/draft.ts";
import type { BuildInput } from "../schema.ts";
import { wireWith } from "../wire-details.ts";
import type { WireMeans } from "../wire-means.ts";
import type { Fit } from "./fit.ts";
import type { Guard } from "./guard.ts";
import { lugAfter, type Move } from "./move.ts";

interface WireRecord {
  readonly from: string;
  readonly to: string;
  readonly how?: WireMeans | undefined;
  readonly colour?: string | undefined;
  readonly length?: number | string | undefined;
  readonly kind?: string | undefined;
  readonly capacitance?: number | string | undefined;
}

type WireInput = BuildInput["wires"][number];

const recordOf = (wire: WireInput): WireRecord =>
  Array.isArray(wire) ? { from: wire[0], to: wire[1] } : (wire as WireRecord);

/** A wire between lugs by their index in a table, whichever end comes first. */
interface Run {
  readonly wire: WireRecord;
  readonly a: number;
  readonly b: number;
}

const keyOf = ({ a, b }: Pick<Run, "a" | "b">) => `${Math.min(a, b)} ${Math.max(a, b)}`;

function runsIn(table: LugTable, wires: readonly WireRecord[]): Run[] {
  return wires.flatMap((wire) => {
    const [a, b] = [table.find(wire.from), table.find(wire.to)];
    return a === undefined || b === undefined || a === b ? [] : [{ wire, a, b }];
  });
}

/** The wires of a plan under the guard's names. */
function namedWires(draft: Draft, names: ReadonlyMap<string, string>): WireRecord[] {
  const named = (lug: string) => {
    const [part = "", ...local] = lug.split(".");
    const name = names.get(part);
    return name === undefined ? undefined : [name, ...local].join(".");
  };
  return draft.wires.flatMap((wire) => {
    const [from, to] = [named(wire.from), named(wire.to)];
    return from === undefined || to === undefined ? [] : [{ ...wire, from, to }];
  });
}

/** The new plan's wires where the guard's parts stand, turned as they are. */
function plannedWires(move: Move, roleOf: Int32Array): WireRecord[] {
  const { guard, given, inOld, names } = move;
  const standsAt = new Map([...roleOf].map((role, lug) => [role, lug]));
  const placed = (lug: string): string | undefined => {
    const [planName = "", ...local] = lug.split(".");
    const was = names.get(inOld.get(planName) ?? "");
    const role = was === undefined ? undefined : guard.table.find([was, ...local].join("."));
    if (role !== undefined && standsAt.get(role) !== role)
      return lugAfter(move, guard.table.nameAt(standsAt.get(role)!));
    const name = given.get(planName);
    return name === undefined ? undefined : [name, ...local].join(".");
  };
  return move.next.wires.flatMap((wire) => {
    const [from, to] = [placed(wire.from), placed(wire.to)];
    return from === undefined || to === undefined ? [] : [{ ...wire, from, to }];
  });
}

/** What a person said of a wire that stays: its colour, length and kind, and what it is made of where that is not the plan's. */
function withHandwriting(wire: WireRecord, was: WireRecord | undefined, old: WireRecord | undefined): WireInput {
  if (!was) return wire as WireInput;
  const how = was.how === old?.how ? wire.how : was.how;
  return wireWith(wire.from, wire.to, { ...was, how }) as WireInput;
}

/** The guard's wires, told by where they stand to its old plan. */
class OldWires {
  readonly runs: readonly Run[];
  readonly #guard: Guard;
  readonly #fit: Fit;
  readonly #planned: ReadonlyMap<string, WireRecord>;

  constructor(move: Move, fit: Fit) {
    this.#guard = move.guard;
    this.#fit = fit;
    this.runs = runsIn(move.guard.table, move.guard.written.wires.map(recordOf));
    const planned = runsIn(move.guard.table, namedWires(move.old, move.names));
    this.#planned = new Map(planned.map((run) => [keyOf(run), run.wire]));
  }

  plannedAs(run: Run): WireRecord | undefined {
    return this.#planned.get(keyOf(run));
  }

  /** Joins what the old plan keeps apart. */
  isByHand({ a, b }: Pick<Run, "a" | "b">): boolean {
    return this.#fit.planNetOf[a] !== this.#fit.planNetOf[b];
  }

  /** Joined by the old plan and apart on the guard. */
  isCut(a: number, b: number): boolean {
    return !this.isByHand({ a, b }) && this.#guard.netOf[a] !== this.#guard.netOf[b];
  }

  netInPlan(lug: number): number {
    return this.#fit.planNetOf[lug]!;
  }

  /** Whether the wires run as the old plan's, but for those by hand. */
  runAsPlanned(): boolean {
    const own = new Set(this.runs.map(keyOf));
    if (own.size !== this.runs.length) return false;
    const missing = [...this.#planned.keys()].filter((key) => !own.has(key));
    return (
      this.runs.every((run) => this.plannedAs(run) || this.isByHand(run)) &&
      missing.every((key) => this.isCut(...(key.split(" ").map(Number) as [number, number])))
    );
  }
}

/** Nets of the new guard: the new plan's, with what the hand has parted and joined. */
function wantedNets(move: Move, old: OldWires, planned: readonly Run[], table: LugTable): DisjointSets {
  const { guard } = move;
  const sets = new DisjointSets(table.lugs.length);
  const before = new Map<number, number>();
  for (const [index, lug] of guard.table.lugs.entries()) {
    const now = table.find(lugAfter(move, lug.name) ?? "");
    if (now !== undefined) before.set(now, index);
  }
  const nets = new DisjointSets(table.lugs.length);
  for (const { a, b } of planned) nets.join(a, b);
  const first = new Map<string, number>();
  for (const [now, was] of before) {
    const key = `${nets.find(now)} ${guard.netOf[was]} ${old.netInPlan(was)}`;
    if (first.has(key)) sets.join(first.get(key)!, now);
    else first.set(key, now);
  }
  for (const { a, b } of planned) {
    const [wasA, wasB] = [before.get(a), before.get(b)];
    if (wasA === undefined || wasB === undefined || !old.isCut(wasA, wasB)) sets.join(a, b);
  }
  return sets;
}

/**
 * The wires of the new guard. Where the guard's run as its old plan's, the new plan's are taken as they are. Where they ran another
 * way, every wire stays that lies within one net of the new guard, and the new plan's are laid where a net is still in pieces.
 */
export function rewired(move: Move, fit: Fit, roleOf: Int32Array, table: LugTable): WireInput[] {
  const old = new OldWires(move, fit);
  const moved = (run: Run): Run | undefined => {
    const [from, to] = [lugAfter(move, run.wire.from), lugAfter(move, run.wire.to)];
    return from === undefined || to === undefined ? undefined : runsIn(table, [{ ...run.wire, from, to }])[0];
  };
  const was = new Map<string, Run>();
  for (const run of old.runs) {
    const now = moved(run);
    if (now) was.set(keyOf(now), run);
  }
  const byHand = old.runs.filter((run) => old.isByHand(run)).flatMap((run) => moved(run) ?? []);
  const planned = runsIn(table, plannedWires(move, roleOf));
  const written = ({ wire, ...ends }: Run) => {
    const before = was.get(keyOf(ends));
    return withHandwriting(wire, before?.wire, before && old.plannedAs(before));
  };
  const wanted = wantedNets(move, old, planned, table);
  const joined = new DisjointSets(table.lugs.length);
  const laid: WireInput[] = [];
  const lay = (wire: WireInput, { a, b }: Run) => {
    laid.push(wire);
    joined.join(a, b);
  };
  for (const run of byHand) wanted.join(run.a, run.b);
  if (old.runAsPlanned()) {
    const parted = planned.filter((run) => wanted.find(run.a) === wanted.find(run.b));
    for (const run of parted) lay(written(run), run);
  } else {
    for (const run of old.runs) {
      const now = moved(run);
      if (now && !old.isByHand(run) && wanted.find(now.a) === wanted.find(now.b)) lay(now.wire as WireInput, now);
    }
    for (const run of planned) {
      if (wanted.find(run.a) === wanted.find(run.b) && joined.find(run.a) !== joined.find(run.b))
        lay(written(run), run);
    }
  }
  const known = new Set(runsIn(table, laid.map(recordOf)).map(keyOf));
  for (const run of byHand) if (!known.has(keyOf(run))) lay(run.wire as WireInput, run);
  return [...laid, ...bridges(wanted, joined, table)];
}

/** Wires for what is wanted in one net and was joined by way of a lug that is gone. */
function bridges(wanted: DisjointSets, joined: DisjointSets, table: LugTable): WireInput[] {
  const wires: WireInput[] = [];
  for (let lug = 0; lug < table.lugs.length; lug++) {
    const head = wanted.find(lug);
    if (joined.find(head) === joined.find(lug)) continue;
    joined.join(head, lug);
    wires.push({ from: table.nameAt(head), to: table.nameAt(lug) });
  }
  return wires;
}
