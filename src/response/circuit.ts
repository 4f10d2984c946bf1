import { partsOfKind } from "../build/build-file.ts";
import type { Build, Part } from "../build/schema.ts";
import type { Settings } from "../build/settings.ts";
import { type Network, NetworkBuilder } from "../network/elements.ts";
import { type Nets, Wiring } from "../wiring/nets.ts";
import { addPickup, type CoilSource, coilSources } from "./pickup-elements.ts";
import { addPot } from "./pot-elements.ts";

/** The network of a build in one setting, seen from the jack. */
export interface Circuit {
  readonly network: Network;
  /** The node of the jack's tip; the sleeve is node 0. */
  readonly outputNode: number;
  readonly nets: Nets;
  readonly nodeOfLug: (lugIndex: number) => number;
}

export interface CircuitOptions {
  /** Whether cable and load hang on the jack; a meter at the jack sees neither. */
  readonly withCableAndLoad: boolean;
}

/** A build ready to be put into any setting. */
export class CircuitMaker {
  readonly build: Build;
  readonly wiring: Wiring;
  readonly sources: readonly CoilSource[];
  readonly #jack: string;

  constructor(build: Build) {
    this.build = build;
    this.wiring = new Wiring(build);
    this.sources = partsOfKind(build, "pickup").flatMap(([name, pickup]) => coilSources(name, pickup));
    this.#jack = partsOfKind(build, "jack")[0]![0];
  }

  circuitIn(settings: Settings, options: CircuitOptions = { withCableAndLoad: true }): Circuit {
    const nets = this.wiring.netsIn(settings);
    const { lugs } = this.wiring;
    const sleeve = nets.netOfLug[lugs.indexOf(`${this.#jack}.sleeve`)]!;
    // The sleeve's net trades places with net 0, since the network's reference is node 0.
    const nodeOfNet = (net: number) => (net === sleeve ? 0 : net === 0 ? sleeve : net);
    const nodeOfLug = (lugIndex: number) => nodeOfNet(nets.netOfLug[lugIndex]!);
    const nodeOf = (lug: string) => nodeOfLug(lugs.indexOf(lug));
    const network = new NetworkBuilder(nets.count);
    for (const [name, part] of Object.entries(this.build.parts)) {
      addPart(network, part, settings.dials[name] ?? 10, (local) => nodeOf(`${name}.${local}`));
    }
    const outputNode = nodeOf(`${this.#jack}.tip`);
    if (options.withCableAndLoad) this.#addCableAndLoad(network, outputNode);
    return { network: network.build(), outputNode, nets, nodeOfLug };
  }

  #addCableAndLoad(network: NetworkBuilder, tip: number): void {
    const { cable, load } = this.build;
    const farads = (cable ? cable.length * cable.capacitance : 0) + load.capacitance;
    network.capacitor(tip, 0, farads);
    network.resistor(tip, 0, load.resistance);
  }
}

function addPart(network: NetworkBuilder, part: Part, dial: number, nodeOf: (local: string) => number): void {
  switch (part.kind) {
    case "pickup":
      addPickup(network, part, nodeOf);
      break;
    case "pot":
      addPot(network, part, dial, nodeOf);
      break;
    case "cap":
      network.capacitor(nodeOf("a"), nodeOf("b"), part.capacitance);
      break;
    case "resistor":
      network.resistor(nodeOf("a"), nodeOf("b"), part.resistance);
      break;
    default:
      break;
  }
}
