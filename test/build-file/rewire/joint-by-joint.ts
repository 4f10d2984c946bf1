import { isGone, type Piece, type Workbench } from "./pieces.ts";

/** More new wires than these are not needed by guards as small as it is used for. */
const NEW_WIRES = 2;

type State = readonly (readonly [string | null, string | null])[];

function isDone(state: State, pieces: readonly Piece[], { lugs, netOf }: Workbench): boolean {
  const group = new Map(lugs.map((lug, index) => [lug, index]));
  for (const [index, ends] of state.entries()) {
    const held = ends.filter((lug) => lug !== null);
    if (held.every(isGone)) continue;
    if (held.length === 1 && pieces[index]!.fixed[ends[0] === null ? 1 : 0]) continue;
    if (held.length === 1 || held.some(isGone)) return false;
    const [a, b] = held.map((lug) => group.get(lug)!);
    for (const [lug, number] of group) if (number === b) group.set(lug, a!);
  }
  const same = (partition: ReadonlyMap<string, number>, a: string, b: string) => partition.get(a) === partition.get(b);
  return lugs.every((a) => lugs.every((b) => same(group, a, b) === same(netOf, a, b)));
}

/** One joint opened, or one loose end soldered to some lug. */
function nextStates(state: State, pieces: readonly Piece[], lugs: readonly string[]): State[] {
  return state.flatMap((ends, index) =>
    ([0, 1] as const).flatMap((end): State[] => {
      const { fixed, reaches } = pieces[index]!;
      if (fixed[end]) return [];
      const put = (lug: string | null): State => state.with(index, end === 0 ? [lug, ends[1]] : [ends[0], lug]);
      if (ends[end] !== null) return [put(null)];
      return (reaches ? [reaches] : lugs).filter((lug) => lug !== ends[1 - end]).map(put);
    }),
  );
}

/** The fewest joints by searching breadth first, joint by joint; undefined where it takes more than `most`. Knows no splices. */
export function jointsOneByOne(workbench: Workbench, most: number): number | undefined {
  const spare: Piece[] = Array.from({ length: NEW_WIRES }, () => ({ ends: [null, null], fixed: [false, false] }));
  const pieces = [...workbench.pieces, ...spare];
  // Lugs that nothing touches, and no net wants joined, are never soldered to.
  const wanted = [...workbench.netOf].filter(
    ([, net]) => [...workbench.netOf.values()].filter((n) => n === net).length > 1,
  );
  const lugs = wanted.map(([lug]) => lug);
  let layer = new Map<string, State>();
  const start: State = pieces.map(({ ends }) => ends);
  layer.set(JSON.stringify(start), start);
  const seen = new Set(layer.keys());
  for (let joints = 0; joints <= most; joints++) {
    const next = new Map<string, State>();
    for (const state of layer.values()) {
      if (isDone(state, pieces, workbench)) return joints;
      for (const reached of nextStates(state, pieces, lugs)) {
        const key = JSON.stringify(reached);
        if (!seen.has(key)) next.set(key, reached);
        seen.add(key);
      }
    }
    layer = next;
  }
  return undefined;
}
