import { idealJoints, isIdealJoint, type Network } from "./elements.ts";
import { slotStarts } from "./slots.ts";

export const RESISTOR = 0;
export const CAPACITOR = 1;
export const BRANCH = 2;
const KINDS = { resistor: RESISTOR, capacitor: CAPACITOR, branch: BRANCH } as const;

/** A network's elements between unknown voltages, in columns; −1 stands for node 0, for no source and for no mutual inductance. */
export interface PortElements {
  readonly count: number;
  readonly nodes: number;
  readonly port: number;
  readonly slotCount: number;
  readonly kind: Uint8Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly slot: Int32Array;
  readonly source: Int32Array;
  /** By element: which mutual inductance is its, and with which other element. */
  readonly mutual: Int32Array;
  readonly partner: Int32Array;
  readonly mutuals: readonly { readonly first: number; readonly second: number; readonly slot: number }[];
  /** Place in these columns of each of the network's elements; −1 of an ideal joint. */
  readonly placeOf: Int32Array;
  readonly unknownOfNode: Int32Array;
}

/** Numbers the nodes, those of ideal joints as one. */
function numbering(network: Network) {
  const joints = idealJoints(network);
  const unknowns = new Map<number, number>([[joints.find(0), -1]]);
  const unknownOf = (node: number) => {
    const joint = joints.find(node);
    const known = unknowns.get(joint);
    if (known !== undefined) return known;
    unknowns.set(joint, unknowns.size - 1);
    return unknowns.size - 2;
  };
  return { unknownOf, joints, unknowns, nodes: () => unknowns.size - 1 };
}

export function portElements(network: Network, output: number): PortElements {
  const { unknownOf, joints, unknowns, nodes } = numbering(network);
  const port = unknownOf(output);
  const starts = slotStarts(network);
  const kept = network.elements
    .map((element, index) => ({ element, index }))
    .filter(({ element }) => !isIdealJoint(element));
  const placeOf = new Map(kept.map(({ index }, place) => [index, place]));
  const column = (of: (each: (typeof kept)[number]) => number) => Int32Array.from(kept, of);
  const mutuals = network.mutuals.map(({ first, second }, index) => ({
    first: placeOf.get(first)!,
    second: placeOf.get(second)!,
    slot: starts[network.elements.length + index]!,
  }));
  const mutual = new Int32Array(kept.length).fill(-1);
  const partner = new Int32Array(kept.length).fill(-1);
  for (const [index, { first, second }] of mutuals.entries()) {
    mutual[first] = index;
    mutual[second] = index;
    partner[first] = second;
    partner[second] = first;
  }
  const a = column(({ element }) => unknownOf(element.a));
  const b = column(({ element }) => unknownOf(element.b));
  return {
    count: kept.length,
    nodes: nodes(),
    port,
    slotCount: starts.at(-1)!,
    kind: Uint8Array.from(kept, ({ element }) => KINDS[element.kind]),
    a,
    b,
    slot: column(({ index }) => starts[index]!),
    source: column(({ element }) => (element.kind === "branch" ? (element.source ?? -1) : -1)),
    mutual,
    partner,
    mutuals,
    placeOf: Int32Array.from(network.elements, (_, index) => placeOf.get(index) ?? -1),
    unknownOfNode: Int32Array.from({ length: network.nodeCount }, (_, node) => unknowns.get(joints.find(node)) ?? -1),
  };
}
