import fc from "fast-check";
import { type Network, NetworkBuilder } from "../../src/network/elements.ts";

/** An element before it stands in a network: nodes as fractions of the node count, values on log scales. */
export interface RandomElement {
  readonly kind: "resistor" | "capacitor" | "branch";
  readonly a: number;
  readonly b: number;
  readonly decades: number;
}

export const NODE_COUNT = 6;

/** Values within what a guard can hold: 100 Ω – 10 MΩ, 10 pF – 1 µF, 0.1 – 10 H with 1 kΩ. */
const RANGES = { resistor: [2, 7], capacitor: [-11, -6], branch: [-1, 1] } as const;

export function randomElements(kinds: readonly RandomElement["kind"][] = ["resistor", "capacitor", "branch"]) {
  const element = fc.record({
    kind: fc.constantFrom(...kinds),
    a: fc.integer({ min: 0, max: NODE_COUNT - 1 }),
    b: fc.integer({ min: 0, max: NODE_COUNT - 1 }),
    decades: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  return fc.array(element, { minLength: 1, maxLength: 12 });
}

function elementValue({ kind, decades }: RandomElement): number {
  const [low, high] = RANGES[kind];
  return 10 ** (low + (high - low) * decades);
}

export interface Options {
  /** Multiplies every impedance. */
  readonly impedanceScale?: number;
  /** New number of each node. */
  readonly relabel?: readonly number[];
}

/**
 * The elements as a network with two sources of 1 kΩ, from node 0 to nodes 1 and 2, in that order.
 */
export function networkOf(elements: readonly RandomElement[], options: Options = {}): Network {
  const { impedanceScale = 1, relabel } = options;
  const node = (number: number) => relabel?.[number] ?? number;
  const network = new NetworkBuilder(NODE_COUNT);
  for (const target of [1, 2]) network.sourceBranch(node(0), node(target), 1000 * impedanceScale, 0);
  for (const element of elements) {
    const [a, b, value] = [node(element.a), node(element.b), elementValue(element)];
    if (element.kind === "resistor") network.resistor(a, b, value * impedanceScale);
    else if (element.kind === "capacitor") network.capacitor(a, b, value / impedanceScale);
    else network.branch(a, b, 1000 * impedanceScale, value * impedanceScale);
  }
  return network.build();
}
