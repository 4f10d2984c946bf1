import { DisjointSets } from "../../disjoint-sets.ts";
import type { AuditContext } from "./context.ts";
import { type Finding, finding } from "./finding.ts";

interface Edge {
  readonly from: number;
  readonly to: number;
}

function pathBetween(edges: readonly Edge[], start: number, goal: number): number[] {
  const cameFrom = new Map([[start, start]]);
  const queue = [start];
  for (const at of queue) {
    for (const { from, to } of edges) {
      const next = from === at ? to : to === at ? from : undefined;
      if (next === undefined || cameFrom.has(next)) continue;
      cameFrom.set(next, at);
      queue.push(next);
    }
  }
  const path = [goal];
  while (path.at(-1) !== start && cameFrom.has(path.at(-1)!)) path.push(cameFrom.get(path.at(-1)!)!);
  return path;
}

/** Ground wires that close a ring: each ground lug reached by two paths. */
export function twoGroundPaths(context: AuditContext): Finding[] {
  const { lugs } = context.wiring;
  const ground = context.build.wires
    .filter(({ from }) => context.isWiredToGround(from))
    .map(({ from, to }): Edge => ({ from: lugs.indexOf(from), to: lugs.indexOf(to) }));
  const joined = new DisjointSets(lugs.lugs.length);
  const tree: Edge[] = [];
  const rings: number[][] = [];
  for (const edge of ground) {
    if (joined.find(edge.from) === joined.find(edge.to)) rings.push(pathBetween(tree, edge.from, edge.to));
    else {
      joined.join(edge.from, edge.to);
      tree.push(edge);
    }
  }
  if (rings.length === 0) return [];
  const names = [...new Set(rings.flat())].map((lug) => lugs.nameAt(lug));
  return [
    finding({
      code: "two-ground-paths",
      lugs: names,
      message: `Ground runs by two paths: ${names.join(", ")} form ${rings.length > 1 ? `${rings.length} rings` : "a ring"}.`,
      remedy: "Harmless in a small guard; to be tidy, leave one of the ring's wires out.",
    }),
  ];
}
