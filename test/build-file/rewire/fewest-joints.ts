import { isGone, type Piece, type Splice, type Workbench } from "./pieces.ts";

interface Way {
  readonly joints: number;
  /** Lugs of the guard as wanted that it joins; none where it joins nothing there. */
  readonly joins?: readonly [string, string];
}

/** Every way that a piece may lie in the end, and the joints to be opened and made for it. */
function waysOf({ ends, fixed, reaches }: Piece, { lugs, netOf }: Workbench): Way[] {
  const places = ends.map((at, end) => (fixed[end] ? [at] : [...new Set([at, null, ...(reaches ? [reaches] : lugs)])]));
  const touches = (end: number, now: string | null) =>
    now === ends[end] ? 0 : Number(ends[end] !== null) + Number(now !== null);
  return places[0]!.flatMap((a) =>
    places[1]!.flatMap((b): Way[] => {
      const joints = touches(0, a) + touches(1, b);
      const held = [a, b].filter((lug) => lug !== null);
      if (held.every(isGone)) return [{ joints }];
      if (held.length === 1) return fixed[a === null ? 1 : 0] ? [{ joints }] : [];
      const [first, second] = held as [string, string];
      if (held.some(isGone) || netOf.get(first) !== netOf.get(second)) return [];
      return [{ joints, joins: [first, second] }];
    }),
  );
}

/** Twisted together as they are, or apart, each of them free. */
function waysOfSplice({ leads }: Splice, { netOf }: Workbench): Way[] {
  const [a, b] = leads;
  if (isGone(a) && isGone(b)) return [{ joints: 0 }];
  return !isGone(a) && !isGone(b) && netOf.get(a) === netOf.get(b) ? [{ joints: 0, joins: [a, b] }] : [];
}

function joined(groups: readonly number[], a: number, b: number): number[] {
  const [into, gone] = [Math.min(groups[a]!, groups[b]!), Math.max(groups[a]!, groups[b]!)];
  return groups.map((group) => (group === gone ? into : group));
}

/**
 * The fewest joints to open and to make, by going through every way in which every piece may lie in the end: for every
 * partition of the lugs that some of the pieces can make, the cheapest way to it.
 * @param most what takes more is not gone into; Infinity where nothing takes less
 */
export function fewestJoints(workbench: Workbench, most: number): number {
  const { lugs, netOf, pieces, splices } = workbench;
  const index = new Map(lugs.map((lug, at) => [lug, at]));
  let best = new Map([[lugs.map((_, at) => at).join(), 0]]);
  const take = (ways: readonly Way[]) => {
    const next = new Map<string, number>();
    const cheapest = new Map<string, Way>();
    for (const way of ways) {
      const key = way.joins?.toSorted().join() ?? "";
      if (way.joints < (cheapest.get(key)?.joints ?? Infinity)) cheapest.set(key, way);
    }
    for (const [key, joints] of best) {
      const groups = key.split(",").map(Number);
      for (const way of cheapest.values()) {
        if (joints + way.joints > most) continue;
        const [a, b] = way.joins?.map((lug) => index.get(lug)!) ?? [0, 0];
        const there = joined(groups, a!, b!).join();
        next.set(there, Math.min(next.get(there) ?? Infinity, joints + way.joints));
      }
    }
    best = next;
  };
  for (const piece of pieces) take(waysOf(piece, workbench));
  for (const splice of splices) {
    const before = best;
    take(waysOfSplice(splice, workbench));
    const kept = best;
    best = new Map([...before].map(([key, joints]) => [key, joints + 1]));
    for (const lead of splice.leads.filter((lug) => !isGone(lug)))
      take(waysOf({ ends: [lead, null], fixed: [true, false] }, workbench));
    for (const [key, joints] of kept) best.set(key, Math.min(best.get(key) ?? Infinity, joints));
  }
  const nets = new Set(netOf.values()).size;
  // A join that is lacking still is a new wire, soldered at both ends.
  return Math.min(...[...best].map(([key, joints]) => joints + 2 * (new Set(key.split(",")).size - nets)));
}
