import { hasCoilLeads, localCoilLeads } from "../build-file/lug-names.ts";
import type { Coil, Pickup } from "../build-file/schema.ts";
import type { NetworkBuilder } from "../network/elements.ts";
import { coilLadder } from "./coil-ladder.ts";

/** A coil as a source of the network. */
export interface CoilSource {
  readonly pickup: string;
  readonly coil: string;
  /** EMF relative to a reference coil, with the sign of winding × magnet. */
  readonly emf: number;
  /** The sign with which the coil takes up hum: its winding alone. */
  readonly humSign: 1 | -1;
  readonly spec: Coil;
}

/** The sign of the string's EMF from start to finish: winding × magnet. */
export function emfSign(coil: Pick<Coil, "winding" | "magnet">): 1 | -1 {
  const winding = humSign(coil);
  return coil.magnet === "north" ? winding : winding === 1 ? -1 : 1;
}

export function humSign(coil: Pick<Coil, "winding">): 1 | -1 {
  return coil.winding === "forward" ? 1 : -1;
}

export function coilSources(name: string, pickup: Pickup): CoilSource[] {
  return Object.entries(pickup.coils).map(([coil, spec]) => ({
    pickup: name,
    coil,
    emf: emfSign(spec) * spec.output,
    humSign: humSign(spec),
    spec,
  }));
}

/**
 * A coil's ladder between its start and finish nodes, with the EMF in its first branch; the winding capacitance across the leads.
 * @returns the branch that carries the inductance, for the mutual inductance
 */
function addCoil(network: NetworkBuilder, start: number, finish: number, coil: Coil): number {
  network.capacitor(start, finish, coil.capacitance);
  const { resistance, inductance, sections, across } = coilLadder(coil);
  let at = sections.length === 0 ? finish : network.node();
  let main: number;
  if (across === undefined) main = network.sourceBranch(start, at, resistance, inductance);
  else {
    const inside = network.node();
    network.sourceBranch(start, inside, resistance, 0);
    network.resistor(inside, finish, across);
    main = network.branch(inside, at, 0, inductance);
  }
  const bridged = sections.map((section, index) => {
    const next = index === sections.length - 1 ? finish : network.node();
    const branch = network.branch(at, next, 0, section.inductance);
    network.resistor(at, next, section.resistance);
    at = next;
    return branch;
  });
  return inductance > 0 ? main : (bridged[0] ?? main);
}

interface CoilEnds {
  readonly start: number;
  readonly finish: number;
}

/** Where the leads of each coil go, given the node of each of the pickup's lugs. */
function coilEnds(network: NetworkBuilder, pickup: Pickup, nodeOf: (local: string) => number): CoilEnds[] {
  const coils = Object.entries(pickup.coils);
  if (coils.length === 1) return [{ start: nodeOf("ground"), finish: nodeOf("hot") }];
  if (hasCoilLeads(pickup)) {
    return coils.map(([name]) => {
      const [start, finish] = localCoilLeads(name);
      return { start: nodeOf(start), finish: nodeOf(finish) };
    });
  }
  const middle = network.node();
  const [first, second] = coils as [[string, Coil], [string, Coil]];
  const sameWinding = first[1].winding === second[1].winding;
  return [
    { start: nodeOf("ground"), finish: middle },
    // Two coils wound alike cancel hum only where the second is joined finish to finish.
    sameWinding ? { start: nodeOf("hot"), finish: middle } : { start: middle, finish: nodeOf("hot") },
  ];
}

/** Adds a pickup's elements; its coils become sources in the order of `coilSources`. */
export function addPickup(network: NetworkBuilder, pickup: Pickup, nodeOf: (local: string) => number): void {
  const coils = Object.values(pickup.coils);
  const branches = coilEnds(network, pickup, nodeOf).map(({ start, finish }, index) =>
    addCoil(network, start, finish, coils[index]!),
  );
  const [first, second] = coils;
  if (!first || !second || !pickup.coupling) return;
  // k is given for the connection in which the EMFs aid; the branches run from start to finish.
  const orientation = emfSign(first) * emfSign(second);
  const henries = pickup.coupling * Math.sqrt(first.inductance * second.inductance) * orientation;
  network.mutual(branches[0]!, branches[1]!, henries);
}
