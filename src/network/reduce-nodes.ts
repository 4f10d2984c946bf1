import { DisjointSets } from "../disjoint-sets.ts";
import { type Branch, idealJoints, type Network } from "./elements.ts";

/** A network whose ideal joints are merged and whose floating parts have a reference each. */
export interface ReducedNetwork {
  /** Unknown-voltage index of every original node; −1 stands for a reference, at 0 V. */
  readonly unknownOfNode: Int32Array;
  readonly voltageCount: number;
  readonly conductors: readonly { a: number; b: number; ohms: number }[];
  readonly capacitors: readonly { a: number; b: number; farads: number }[];
  /** Resistors whose value is given later; each has a current unknown of its own, so that 0 Ω is an ideal joint. */
  readonly variables: readonly { a: number; b: number; ohms: number; parameter: number }[];
  /** Branches with their ends as unknown indexes, in the order of their current unknowns. */
  readonly branches: readonly { a: number; b: number; branch: Branch }[];
  readonly mutuals: readonly { first: number; second: number; henries: number }[];
  readonly sourceCount: number;
}

/** A smaller resistor has a current unknown: as a conductance it would swamp its nodes, and the digits of all else there. */
const LEAST_OHMS = 10;

/**
 * Merges 0 Ω resistors, drops elements that have both ends on one node, and gives every part of the network that hangs
 * together a reference node: node 0 where it belongs to the part, else the part's first node, whose potential nothing
 * determines and no current depends on.
 */
export function reduceNodes(network: Network): ReducedNetwork {
  const joints = idealJoints(network);
  const parts = new DisjointSets(joints);
  for (const element of network.elements) parts.join(element.a, element.b);

  const unknownOfNode = new Int32Array(network.nodeCount).fill(-1);
  let voltageCount = 0;
  for (let node = 0; node < network.nodeCount; node++) {
    const joint = joints.find(node);
    if (joint !== node) unknownOfNode[node] = unknownOfNode[joint]!;
    else if (parts.find(node) !== node) unknownOfNode[node] = voltageCount++;
  }

  const branchNumber = new Map<number, number>();
  const branches: { a: number; b: number; branch: Branch }[] = [];
  const conductors: { a: number; b: number; ohms: number }[] = [];
  const capacitors: { a: number; b: number; farads: number }[] = [];
  const variables: { a: number; b: number; ohms: number; parameter: number }[] = [];
  for (const [index, element] of network.elements.entries()) {
    const a = unknownOfNode[element.a]!;
    const b = unknownOfNode[element.b]!;
    if (element.kind === "branch") {
      branchNumber.set(index, branches.length);
      branches.push({ a, b, branch: element });
    } else if (joints.find(element.a) !== joints.find(element.b)) {
      if (element.kind === "resistor" && element.parameter !== undefined)
        variables.push({ a, b, ohms: element.ohms, parameter: element.parameter });
      else if (element.kind === "resistor" && element.ohms < LEAST_OHMS)
        branches.push({ a, b, branch: { ...element, kind: "branch", henries: 0 } });
      else if (element.kind === "resistor") conductors.push({ a, b, ohms: element.ohms });
      else capacitors.push({ a, b, farads: element.farads });
    }
  }
  const mutuals = network.mutuals.map(({ first, second, henries }) => ({
    first: branchNumber.get(first)!,
    second: branchNumber.get(second)!,
    henries,
  }));
  return {
    unknownOfNode,
    voltageCount,
    conductors,
    capacitors,
    variables,
    branches,
    mutuals,
    sourceCount: network.sourceCount,
  };
}
