import { idealJoints, isIdealJoint, type Network } from "./elements.ts";

interface Edge {
  readonly a: number;
  readonly b: number;
  /** Index of the element; −1 stands for the port. */
  readonly element: number;
}

/** The blocks (biconnected components) of a graph, as lists of edges: J. Hopcroft, R. Tarjan, CACM 16 (1973) 372. */
function blocksOf(nodeCount: number, edges: readonly Edge[]): Edge[][] {
  const incident: number[][] = Array.from({ length: nodeCount }, () => []);
  for (const [index, { a, b }] of edges.entries()) {
    incident[a]!.push(index);
    incident[b]!.push(index);
  }
  const depth = new Int32Array(nodeCount).fill(-1);
  const low = new Int32Array(nodeCount);
  const used = new Uint8Array(edges.length);
  const stack: Edge[] = [];
  const blocks: Edge[][] = [];
  const visit = (node: number, level: number): void => {
    depth[node] = level;
    low[node] = level;
    for (const index of incident[node]!) {
      if (used[index]) continue;
      used[index] = 1;
      const edge = edges[index]!;
      const other = edge.a === node ? edge.b : edge.a;
      stack.push(edge);
      if (depth[other]! < 0) {
        visit(other, level + 1);
        low[node] = Math.min(low[node]!, low[other]!);
        if (low[other]! >= level) blocks.push(stack.splice(stack.lastIndexOf(edge)));
      } else low[node] = Math.min(low[node]!, depth[other]!);
    }
  };
  for (let node = 0; node < nodeCount; node++) if (depth[node]! < 0) visit(node, 0);
  return blocks;
}

/**
 * The elements that can carry current between a port (a node and node 0) and a source: those in the port's own block, and
 * those in blocks that mutual inductance ties to it. All others hang from the rest by a single node, or by none.
 * @returns the network with these elements alone; the numbering of nodes and sources is kept
 */
export function relevantPart(network: Network, output: number): Network {
  const joints = idealJoints(network);
  const edges = network.elements.map((element, index) => ({
    a: joints.find(element.a),
    b: joints.find(element.b),
    element: index,
  }));
  const loops = edges.filter((edge) => edge.a === edge.b);
  const port = { a: joints.find(output), b: 0, element: -1 };
  const proper = edges.filter((edge) => edge.a !== edge.b);
  const blocks = blocksOf(network.nodeCount, port.a === port.b ? proper : [...proper, port]);
  const blockOf = new Int32Array(network.elements.length).fill(-1);
  const members: Edge[][] = [...blocks.filter((block) => block.length > 1), ...loops.map((edge) => [edge])];
  for (const [number, block] of members.entries())
    for (const { element } of block) if (element >= 0) blockOf[element] = number;
  const kept = new Set<number>();
  for (const [number, block] of members.entries()) if (block.includes(port)) kept.add(number);
  closeOverMutuals(network, blockOf, kept);
  return subNetwork(network, (index) => kept.has(blockOf[index]!) || isIdealJoint(network.elements[index]!));
}

function closeOverMutuals(network: Network, blockOf: Int32Array, kept: Set<number>): void {
  for (let before = -1; before !== kept.size; ) {
    before = kept.size;
    for (const { first, second } of network.mutuals) {
      const [one, two] = [blockOf[first]!, blockOf[second]!];
      if (kept.has(one) && two >= 0) kept.add(two);
      if (kept.has(two) && one >= 0) kept.add(one);
    }
  }
}

function subNetwork(network: Network, keeps: (index: number) => boolean): Network {
  const newIndex = new Map<number, number>();
  const elements = network.elements.filter((_, index) => {
    if (!keeps(index)) return false;
    newIndex.set(index, newIndex.size);
    return true;
  });
  const mutuals = network.mutuals.flatMap(({ first, second, henries }) => {
    const [one, two] = [newIndex.get(first), newIndex.get(second)];
    return one === undefined || two === undefined ? [] : [{ first: one, second: two, henries }];
  });
  return { ...network, elements, mutuals };
}
