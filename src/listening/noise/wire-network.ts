import type { Spot } from "../../build-file/bodies/spot.ts";
import type { Settings } from "../../build-file/settings.ts";
import { DisjointSets } from "../../disjoint-sets.ts";
import { faultAt } from "../../errors.ts";
import { MAX_WIRED_LUGS } from "../../limits.ts";
import type { Branch, Element, Network } from "../../network/elements.ts";
import type { CircuitMaker } from "../../response/circuit.ts";
import { lengthOf, sweptArea } from "./path.ts";
import type { Routes } from "./routes.ts";

/** A guard in one setting with every lug a node and every wire an element, so that loops of wire are loops of the network. */
export interface WireNetwork {
  readonly network: Network;
  readonly outputNode: number;
  /** Of every element, what it adds to the area of a loop through it, m²; from its terminal a to b. */
  readonly sweptAreas: Float64Array;
  /** The nodes that each of the build's wires joins. */
  readonly wireNodes: readonly (readonly [number, number])[];
}

/** Copper of 0.64 mm, the usual hook-up wire: 53 mΩ a metre (ASTM B258). */
const WIRE_OHMS_PER_METRE = 0.053;
/** A joint and what of a wire is in it, so that two joints at one place are no ideal joint. */
const JOINT_OHMS = 1e-4;
/** A closed contact of a switch: customary initial figures are 10 to 20 mΩ; common practice, no source. */
const CONTACT_OHMS = 0.01;
/** In place of an ideal joint inside a part. */
const LEAST_OHMS = 1e-3;
/** Carries nothing: it gives a part that hangs apart from all else its place in the equations. */
const TIE_OHMS = 1;

const wire = (a: number, b: number, ohms: number): Branch => ({ kind: "branch", a, b, ohms, henries: 0 });

/** Where every node lies: a lug at its place, a node inside a part where the elements from its lugs first reach it. */
function nodeSpots(nodeCount: number, elements: readonly Element[], known: Map<number, Spot>): Map<number, Spot> {
  const spots = new Map(known);
  for (let grows = true; grows && spots.size < nodeCount; ) {
    grows = false;
    for (const { a, b } of elements) {
      const [spotA, spotB] = [spots.get(a), spots.get(b)];
      if (spotA && !spotB) spots.set(b, spotA);
      else if (spotB && !spotA) spots.set(a, spotB);
      else continue;
      grows = true;
    }
  }
  return spots;
}

/** The nodes that elements meet in. */
function touched(elements: readonly Element[]): Set<number> {
  return new Set(elements.flatMap(({ a, b }) => [a, b]));
}

/** Contacts between lugs that something hangs on: a spare lug between them is passed over. */
function closedContacts(pairs: readonly (readonly [number, number])[], inUse: ReadonlySet<number>): Branch[] {
  const groups = new Map<number, number[]>();
  for (const [first, other] of pairs) groups.set(first, [...(groups.get(first) ?? [first]), other]);
  return [...groups.values()].flatMap((group) => {
    const [first, ...others] = group.filter((node) => inUse.has(node));
    return others.map((other) => wire(first!, other, CONTACT_OHMS));
  });
}

function tied(elements: readonly Element[], nodeCount: number): Element[] {
  const joined = new DisjointSets(nodeCount);
  for (const { a, b } of elements) joined.join(a, b);
  const inUse = touched(elements);
  const ties: Element[] = [];
  for (let node = 1; node < nodeCount; node++) {
    if (!inUse.has(node) || joined.find(node) === joined.find(0)) continue;
    joined.join(node, 0);
    ties.push({ kind: "resistor", a: node, b: 0, ohms: TIE_OHMS });
  }
  return ties;
}

/**
 * @param maker of the build whose routes these are
 * @throws PresolderError LIMIT_EXCEEDED for more than MAX_WIRED_LUGS
 */
export function wireNetworkOf(maker: CircuitMaker, routes: Routes, settings: Settings): WireNetwork {
  const { nets, contacts } = maker.wiring.lugsIn(settings);
  const circuit = maker.circuitIn(settings, { withCableAndLoad: true, nets });
  const { nodeOfLug, outputNode } = circuit;
  const { lugs } = maker.wiring;
  const wireNodes = maker.build.wires.map(
    ({ from, to }) => [nodeOfLug(lugs.indexOf(from)), nodeOfLug(lugs.indexOf(to))] as const,
  );
  const parts = circuit.network.elements.map((element) =>
    element.kind === "resistor" && element.ohms === 0 ? { ...element, ohms: LEAST_OHMS } : element,
  );
  const wires = wireNodes.map(([a, b], index) =>
    wire(a, b, JOINT_OHMS + WIRE_OHMS_PER_METRE * lengthOf(routes.wires[index]!)),
  );
  const inUse = touched([...parts, ...wires]);
  if (inUse.size > MAX_WIRED_LUGS) {
    const message = `${inUse.size} lugs and joints carry something; expected at most ${MAX_WIRED_LUGS} where hum is worked out`;
    throw faultAt("LIMIT_EXCEEDED", "build.wires", message);
  }
  const pairs = contacts.map(([a, b]) => [nodeOfLug(a), nodeOfLug(b)] as const);
  const closed = closedContacts(pairs, inUse);
  const laid = [...parts, ...wires, ...closed];
  const { nodeCount, mutuals, sourceCount } = circuit.network;
  const elements = [...laid, ...tied(laid, nodeCount)];
  const spots = nodeSpots(nodeCount, laid, new Map(routes.lugs.map((spot, lug) => [nodeOfLug(lug), spot])));
  const sweptAreas = Float64Array.from(elements, ({ a, b }, index) => {
    const which = index - parts.length;
    if (which >= 0 && which < wires.length) return sweptArea(routes.wires[which]!);
    const [from, to] = [spots.get(a), spots.get(b)];
    return from && to && index < laid.length ? sweptArea([from, to]) : 0;
  });
  return { network: { nodeCount, elements, mutuals, sourceCount }, outputNode, sweptAreas, wireNodes };
}
