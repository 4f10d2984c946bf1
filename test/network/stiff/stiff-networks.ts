import { type Network, NetworkBuilder } from "../../../src/network/elements.ts";
import { Random } from "../../random.ts";

export interface StiffNetwork {
  readonly network: Network;
  readonly output: number;
  readonly frequenciesHz: Float64Array;
}

export const STIFF_NETWORKS = 1000;

/** From 10^low to 10^high, of three digits, as values are written. */
function decades(random: Random, low: number, high: number): number {
  return Number((10 ** (low + (high - low) * random.next())).toPrecision(3));
}

function addElement(network: NetworkBuilder, random: Random, a: number, b: number, coils: number[]): void {
  const kind = random.next();
  if (kind < 0.6) network.resistor(a, b, decades(random, -6, 12));
  else if (kind < 0.8) network.capacitor(a, b, decades(random, -12, -5));
  else coils.push(network.branch(a, b, decades(random, -6, 6), decades(random, -4, 3)));
}

/** One source, and parts from micro- to teraohms all beside each other; the same for the same seed. */
export function stiffNetwork(seed: number): StiffNetwork {
  const random = new Random(seed);
  const nodes = 3 + random.below(8);
  const network = new NetworkBuilder(nodes);
  const coils: number[] = [network.sourceBranch(0, 1, decades(random, -6, 6), decades(random, -4, 1))];
  for (let node = 2; node < nodes; node++) addElement(network, random, random.below(node), node, coils);
  for (let extra = nodes + random.below(nodes); extra > 0; extra--) {
    const a = random.below(nodes);
    const b = random.below(nodes - 1);
    addElement(network, random, a, b < a ? b : b + 1, coils);
  }
  const built = network.build();
  if (coils.length > 1 && random.chance(0.5)) {
    const [first, second] = [coils[0]!, coils[1]!];
    const henries = [first, second].map((index) => {
      const element = built.elements[index]!;
      return element.kind === "branch" ? element.henries : 0;
    });
    const coupling = random.pick([0.05, -0.5, 0.9, 0.999]);
    network.mutual(first, second, coupling * Math.sqrt(henries[0]! * henries[1]!));
  }
  const output = 2 + random.below(nodes - 2);
  return {
    network: network.build(),
    output,
    frequenciesHz: Float64Array.of(...[0, 1].map(() => decades(random, 1.3, 5.3))),
  };
}
