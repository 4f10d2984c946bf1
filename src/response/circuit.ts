import { detailsOf } from "../build-file/connections.ts";
import { partsOfKind } from "../build-file/parts-of-kind.ts";
import type { Build, Part, PartOf, Pot } from "../build-file/schema.ts";
import type { Settings } from "../build-file/settings.ts";
import { USUAL_SCREENED_FARADS_PER_METRE } from "../build-file/wire-kinds.ts";
import { type Network, NetworkBuilder } from "../network/elements.ts";
import { type Nets, Wiring } from "../wiring/nets.ts";
import { capLadder } from "./cap-ladder.ts";
import { addPickup, type CoilSource, coilSources } from "./pickup-elements.ts";
import { addPot, addVariablePot, liftsTrack, potTrackCount, potTrackOhmsInto } from "./pot-elements.ts";

/** The network of a build in one setting, seen from the jack. */
export interface Circuit {
  readonly network: Network;
  /** The node of the jack's tip or, where the cable has a resistance, of the cable's far end; the sleeve is node 0. */
  readonly outputNode: number;
  readonly nets: Nets;
  readonly nodeOfLug: (lugIndex: number) => number;
  /** Index of each part's first element; its others follow. */
  readonly firstElementOf: ReadonlyMap<string, number>;
  /** How many elements are the parts'; after them come screens of wires, cable and load. */
  readonly partElements: number;
}

export interface CircuitOptions {
  /** Whether cable and load hang on the jack; a meter at the jack sees neither. */
  readonly withCableAndLoad: boolean;
  /** In place of those that wires and switches join, as where each wire is an element of its own. */
  readonly nets?: Nets;
}

/** A build ready to be put into any setting. */
export class CircuitMaker {
  readonly build: Build;
  readonly wiring: Wiring;
  readonly sources: readonly CoilSource[];
  readonly #jack: string;
  readonly #pots: readonly [string, Pot][];
  readonly #noLoadPots: readonly [string, Pot][];
  /** Number of each pot's first variable resistor. */
  readonly #firstTrack = new Map<string, number>();
  #trackCount = 0;

  /** @param wiring that of a build with the same parts and wires, where there is one */
  constructor(build: Build, wiring: Wiring = new Wiring(build)) {
    this.build = build;
    this.wiring = wiring;
    this.sources = partsOfKind(build, "pickup").flatMap(([name, pickup]) => coilSources(name, pickup));
    this.#pots = partsOfKind(build, "pot");
    this.#noLoadPots = this.#pots.filter(([, pot]) => pot.noLoad);
    for (const [name, pot] of this.#pots) {
      this.#firstTrack.set(name, this.#trackCount);
      this.#trackCount += potTrackCount(pot);
    }
    this.#jack = partsOfKind(build, "jack")[0]![0];
  }

  circuitIn(settings: Settings, options: CircuitOptions = { withCableAndLoad: true }): Circuit {
    return this.#assemble(settings, options, (network, name, pot, nodeOf) =>
      addPot(network, pot, dialOf(settings, name), nodeOf),
    );
  }

  /**
   * The circuit with its pots' tracks as variable resistors, numbered as `trackOhms` lists them, but for the pots `atRest`, which
   * stay as they stand.
   */
  templateIn(settings: Settings, atRest: readonly string[] = []): Circuit {
    return this.#assemble(settings, { withCableAndLoad: true }, (network, name, pot, nodeOf) => {
      const dial = dialOf(settings, name);
      if (atRest.includes(name)) addPot(network, pot, dial, nodeOf);
      else addVariablePot(network, pot, this.#firstTrack.get(name)!, liftsTrack(pot, dial), nodeOf);
    });
  }

  /** How many variable resistors a template has. */
  variableCount(atRest: readonly string[] = []): number {
    const moved = this.#pots.filter(([name]) => !atRest.includes(name));
    return moved.reduce((count, [, pot]) => count + potTrackCount(pot), 0);
  }

  /** Settings with equal keys share a template. */
  templateKey(settings: Settings, atRest: readonly string[] = []): string {
    let key = "";
    for (const name in settings.switches) key += `${settings.switches[name]} `;
    for (const [name, pot] of this.#noLoadPots) key += liftsTrack(pot, dialOf(settings, name)) ? "lifted " : "on ";
    for (const name of atRest) key += `${dialOf(settings, name)} `;
    return key;
  }

  /** The pots that no two of these settings set differently. */
  potsAtRest(settings: readonly Settings[]): string[] {
    const names = this.#pots.map(([name]) => name);
    return names.filter((name) => settings.every((state) => dialOf(state, name) === dialOf(settings[0]!, name)));
  }

  /** The ohms of every variable resistor of the template in these settings. */
  trackOhms(settings: Settings): Float64Array {
    const ohms = new Float64Array(this.#trackCount);
    for (const [name, pot] of this.#pots)
      potTrackOhmsInto(pot, dialOf(settings, name), ohms, this.#firstTrack.get(name)!);
    return ohms;
  }

  #assemble(settings: Settings, options: CircuitOptions, addPotElements: AddPot): Circuit {
    const nets = options.nets ?? this.wiring.netsIn(settings);
    const { lugs } = this.wiring;
    const jack = lugs.lugsOf(this.#jack);
    const sleeve = nets.netOfLug[jack.get("sleeve")!]!;
    // The sleeve's net trades places with net 0, since the network's reference is node 0.
    const nodeOfNet = (net: number) => (net === sleeve ? 0 : net === 0 ? sleeve : net);
    const nodeOfLug = (lugIndex: number) => nodeOfNet(nets.netOfLug[lugIndex]!);
    const network = new NetworkBuilder(nets.count);
    const firstElementOf = new Map<string, number>();
    for (const [name, part] of Object.entries(this.build.parts)) {
      firstElementOf.set(name, network.elementCount);
      const indexes = lugs.lugsOf(name);
      const nodeOfLocal = (local: string) => nodeOfLug(indexes.get(local)!);
      if (part.kind === "pot") addPotElements(network, name, part, nodeOfLocal);
      else addPart(network, part, nodeOfLocal);
    }
    const partElements = network.elementCount;
    addScreens(network, this.build, (lug) => nodeOfLug(lugs.indexOf(lug)));
    const tip = nodeOfLug(jack.get("tip")!);
    const outputNode = options.withCableAndLoad ? addCableAndLoad(network, tip, this.build) : tip;
    return { network: network.build(), outputNode, nets, nodeOfLug, firstElementOf, partElements };
  }
}

/** @returns the node of the input that the guitar is plugged into */
function addCableAndLoad(network: NetworkBuilder, tip: number, { cable, load }: Build): number {
  const ohms = cable?.resistance ? cable.length * cable.resistance : 0;
  const input = ohms === 0 || tip === 0 ? tip : network.node();
  if (input !== tip) network.resistor(tip, input, ohms);
  const farads = cable ? cable.length * cable.capacitance : 0;
  network.resistor(input, 0, load.resistance);
  if (load.stopper === undefined || load.capacitance === 0) network.capacitor(input, 0, farads + load.capacitance);
  else {
    network.capacitor(input, 0, farads);
    const grid = network.node();
    network.resistor(input, grid, load.stopper);
    network.capacitor(grid, 0, load.capacitance);
  }
  return input;
}

/** What screened wires have from their core to the grounded screen. */
function addScreens(network: NetworkBuilder, { wires }: Build, nodeOf: (lug: string) => number): void {
  for (const wire of wires) {
    const { kind, length, capacitance = USUAL_SCREENED_FARADS_PER_METRE } = detailsOf(wire);
    const node = nodeOf(wire.from);
    if (kind === "screened" && length !== undefined && node !== 0) network.capacitor(node, 0, length * capacitance);
  }
}

type NodeOf = (local: string) => number;
type AddPot = (network: NetworkBuilder, name: string, pot: Pot, nodeOf: NodeOf) => void;

function dialOf(settings: Settings, pot: string): number {
  return settings.dials[pot] ?? 10;
}

function addCap(network: NetworkBuilder, cap: PartOf<"cap">, nodeOf: NodeOf): void {
  const [a, b] = [nodeOf("a"), nodeOf("b")];
  const { farads, branches } = capLadder(cap);
  network.capacitor(a, b, farads);
  for (const branch of branches) {
    const inner = network.node();
    network.resistor(a, inner, branch.ohms);
    network.capacitor(inner, b, branch.farads);
  }
}

/** Adds the elements of a part that no dial turns. */
export function addPart(network: NetworkBuilder, part: Exclude<Part, Pot>, nodeOf: NodeOf): void {
  switch (part.kind) {
    case "pickup":
      addPickup(network, part, nodeOf);
      break;
    case "cap":
      addCap(network, part, nodeOf);
      break;
    case "resistor":
      network.resistor(nodeOf("a"), nodeOf("b"), part.resistance);
      break;
    case "switch":
    case "jack":
    case "terminal":
      // Joints alone, which the nets already are.
      break;
    default:
      part satisfies never;
  }
}
