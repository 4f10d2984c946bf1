import type { Settings } from "../../build-file/settings.ts";
import { relevantPart } from "../../network/blocks.ts";
import { type Element, idealJoints, type Mutual, type Network } from "../../network/elements.ts";
import { Port } from "../../network/port.ts";
import { slotStarts } from "../../network/slots.ts";
import type { Circuit, CircuitMaker } from "../../response/circuit.ts";
import type { Point } from "./point.ts";
import { RIG } from "./rig-unknowns.ts";

/** Where a slot of a view gets its value: a part's, at its dial. */
export interface Origin {
  readonly part: string;
  readonly slot: number;
  /** Of what is no part's and nothing moves. */
  readonly fixed?: number;
}

/** A guard in one setting as the jack sees it, the interface's own input across it. */
export interface View {
  /** null where the jack is shorted. */
  readonly port: Port | null;
  readonly origins: readonly Origin[];
  readonly dialOf: (part: string) => number;
  /** Index of each coil's source, by `coilKey`. */
  readonly sources: ReadonlyMap<string, number>;
  /** The same for views of equal networks from equal parts. */
  readonly shape: string;
}

export const coilKey = (pickup: string, coil: string) => `${pickup}.${coil}`;

function withInput({ network, outputNode }: Circuit): Network {
  const input: Element[] = [
    { kind: "resistor", a: outputNode, b: 0, ohms: 1 },
    { kind: "capacitor", a: outputNode, b: 0, farads: 1 },
  ];
  return { ...network, elements: [...network.elements, ...input] };
}

/** Whose every element and mutual inductance is, and which of that part's slots begins it. */
function originsOf(circuit: Circuit, network: Network): { elements: Origin[]; mutuals: Origin[] } {
  const starts = slotStarts(network);
  const firsts = [...circuit.firstElementOf].sort(([, a], [, b]) => a - b);
  const last = circuit.network.elements.length;
  const elements: Origin[] = [];
  const endOf = new Map<string, number>();
  let which = -1;
  for (let index = 0; index < network.elements.length; index++) {
    while (which + 1 < firsts.length && firsts[which + 1]![1] <= index) which++;
    // What comes after the parts is screens of wires, and at last the interface.
    const element = network.elements[index]!;
    if (index >= circuit.partElements && index < last) {
      const fixed = element.kind === "capacitor" ? element.farads : 0;
      elements.push({ part: RIG, slot: 0, fixed });
      continue;
    }
    const isInput = index >= last;
    const part = isInput ? RIG : firsts[which]![0];
    const slot = isInput ? index - last : starts[index]! - starts[firsts[which]![1]]!;
    elements.push({ part, slot });
    endOf.set(part, slot + starts[index + 1]! - starts[index]!);
  }
  const mutuals = network.mutuals.map(({ first }) => {
    const { part } = elements[first]!;
    const slot = endOf.get(part)!;
    endOf.set(part, slot + 1);
    return { part, slot };
  });
  return { elements, mutuals };
}

function mutualIndex(network: Network, kept: Network, { first, second }: Mutual): number {
  const [one, two] = [kept.elements[first]!, kept.elements[second]!];
  return network.mutuals.findIndex(
    (each) => network.elements[each.first] === one && network.elements[each.second] === two,
  );
}

/** A name of a network's form that does not depend on how its nodes happen to be numbered. */
function shapeOf(
  kept: Network,
  output: number,
  origins: readonly Origin[],
  nominalOf: (origin: Origin) => number,
): string {
  const joints = idealJoints(kept);
  const names = new Map<number, number>([
    [joints.find(0), 0],
    [joints.find(output), 1],
  ]);
  const nameOf = (node: number) => {
    const joint = joints.find(node);
    if (!names.has(joint)) names.set(joint, names.size);
    return names.get(joint)!;
  };
  const starts = slotStarts(kept);
  const elements = kept.elements.map((element, index) => {
    const origin = origins[starts[index]!]!;
    const source = element.kind === "branch" && element.source !== undefined ? `s${element.source}` : "";
    return `${element.kind[0]}${source}${nameOf(element.a)},${nameOf(element.b)}:${origin.part}#${origin.slot}=${nominalOf(origin).toPrecision(6)}`;
  });
  return [
    ...elements,
    ...kept.mutuals.map(({ first, second, henries }) => `m${first},${second}:${henries.toPrecision(6)}`),
  ].join(" ");
}

/** @param ports of the shapes that are known already: most departures leave most settings as they were */
export function viewOf(
  maker: CircuitMaker,
  settings: Settings,
  nominal: Point,
  ports: Map<string, Port> = new Map(),
): View {
  const circuit = maker.circuitIn(settings, { withCableAndLoad: false });
  const { outputNode } = circuit;
  const dialOf = (part: string) => settings.dials[part] ?? 10;
  const sources = new Map(maker.sources.map(({ pickup, coil }, index) => [coilKey(pickup, coil), index] as const));
  const whole = withInput(circuit);
  const joints = idealJoints(whole);
  if (joints.find(outputNode) === joints.find(0)) return { port: null, origins: [], dialOf, sources, shape: "short" };
  const kept = relevantPart(whole, outputNode);
  const indexOf = new Map<Element, number>(whole.elements.map((element, index) => [element, index]));
  const all = originsOf(circuit, whole);
  const starts = slotStarts(kept);
  const origins: Origin[] = [];
  for (const [index, element] of kept.elements.entries()) {
    const first = all.elements[indexOf.get(element)!]!;
    for (let each = starts[index]!; each < starts[index + 1]!; each++)
      origins.push({ ...first, slot: first.slot + each - starts[index]! });
  }
  for (const mutual of kept.mutuals) origins.push(all.mutuals[mutualIndex(whole, kept, mutual)]!);
  const nominalOf = ({ part, slot, fixed }: Origin) =>
    fixed ?? nominal.slotsOf(maker.build, part, dialOf(part)).values[slot]!;
  const shape = shapeOf(kept, outputNode, origins, nominalOf);
  const port = ports.get(shape) ?? new Port(kept, outputNode);
  ports.set(shape, port);
  return { port, origins, dialOf, sources, shape };
}
