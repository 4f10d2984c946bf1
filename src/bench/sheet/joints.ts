import type { Connection } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import { DisjointSets } from "../../disjoint-sets.ts";

export type JointKind = "case" | "lug" | "leg" | "lead" | "splice";

/** One place to heat, once, with everything that meets there. */
export interface Joint {
  readonly kind: JointKind;
  /** The lug; for a splice all leads that are twisted together. */
  readonly lugs: readonly string[];
  /** Numbers of the connections that end here. */
  readonly arrivals: readonly number[];
}

function kindOf(build: Build, lug: string): JointKind {
  const [part, local] = lug.split(".");
  const { kind } = build.parts[part!]!;
  switch (kind) {
    case "pot":
      return local === "case" ? "case" : "lug";
    case "cap":
    case "resistor":
      return "leg";
    case "pickup":
      return "lead";
    case "switch":
    case "jack":
    case "terminal":
      return "lug";
  }
}

/**
 * The joints of a build, in the order of their first connection. Leads or legs that meet only each other are one splice; a
 * lug that a lead or leg merely grows out of needs none.
 */
export function jointsOf(build: Build, connections: readonly Connection[]): Joint[] {
  const lugs = [...new Set(connections.flatMap(({ from, to }) => [from, to]))];
  const at = new Map(lugs.map((lug, index) => [lug, index]));
  const clusters = new DisjointSets(lugs.length);
  for (const { from, to, grownFrom } of connections)
    if (grownFrom.length === 2) clusters.join(at.get(from)!, at.get(to)!);
  const byCluster = new Map<number, { lugs: Set<string>; arrivals: Set<number>; soldered: boolean }>();
  for (const { number, from, to, grownFrom, means } of connections) {
    for (const lug of [from, to]) {
      const cluster = clusters.find(at.get(lug)!);
      const joint = byCluster.get(cluster) ?? { lugs: new Set(), arrivals: new Set(), soldered: false };
      byCluster.set(cluster, joint);
      joint.lugs.add(lug);
      const grows = grownFrom.includes(lug) && grownFrom.length === 1;
      if (grows) continue;
      joint.arrivals.add(number);
      if (means !== "inside") joint.soldered = true;
    }
  }
  return [...byCluster.values()]
    .filter(({ soldered }) => soldered)
    .map((joint) => {
      const names = [...joint.lugs];
      return {
        kind: names.length > 1 ? "splice" : kindOf(build, names[0]!),
        lugs: names,
        arrivals: [...joint.arrivals],
      };
    });
}
