import { DisjointSets } from "../disjoint-sets.ts";

/**
 * A linear network of two-terminal elements between nodes 0 … nodeCount − 1. Node 0 is the reference.
 * Values are ohms, farads and henries. A resistor of 0 Ω is an ideal joint and merges its nodes.
 */
export interface Resistor {
  readonly kind: "resistor";
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  /** Index of a value given later, where this resistance varies from setting to setting. */
  readonly parameter?: number;
}

export interface Capacitor {
  readonly kind: "capacitor";
  readonly a: number;
  readonly b: number;
  readonly farads: number;
}

/**
 * A branch with a current of its own: series resistance and inductance (either may be 0, not both), and where `source` is
 * given an EMF that drives current out of terminal b: with no current, v(b) − v(a) = EMF.
 */
export interface Branch {
  readonly kind: "branch";
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  readonly henries: number;
  /** Index of this EMF among the network's sources. */
  readonly source?: number;
}

export type Element = Resistor | Capacitor | Branch;

/** Mutual inductance between two branches, positive where currents a → b in both aid each other. */
export interface Mutual {
  /** Indexes into `elements`; both are branches. */
  readonly first: number;
  readonly second: number;
  readonly henries: number;
}

export interface Network {
  readonly nodeCount: number;
  readonly elements: readonly Element[];
  readonly mutuals: readonly Mutual[];
  readonly sourceCount: number;
}

/** Whether an element joins its nodes outright, whatever the setting. */
export function isIdealJoint(element: Element): boolean {
  return element.kind === "resistor" && element.ohms === 0 && element.parameter === undefined;
}

/** The nodes of a network, joined where ideal joints join them. */
export function idealJoints(network: Network): DisjointSets {
  const joints = new DisjointSets(network.nodeCount);
  for (const element of network.elements) if (isIdealJoint(element)) joints.join(element.a, element.b);
  return joints;
}

/** Every capacitor and inductance adds at most one power of s; parallel capacitors count once. */
export function degreeBound(network: Network): number {
  const pairs = new Set<number>();
  let inductances = 0;
  for (const element of network.elements) {
    const { a, b } = element;
    switch (element.kind) {
      case "capacitor":
        pairs.add(Math.min(a, b) * network.nodeCount + Math.max(a, b));
        break;
      case "branch":
        if (element.henries > 0) inductances++;
        break;
      case "resistor":
        break;
      default:
        element satisfies never;
    }
  }
  return pairs.size + inductances;
}

/** Collects elements and hands out internal nodes. */
export class NetworkBuilder {
  readonly #elements: Element[] = [];
  readonly #mutuals: Mutual[] = [];
  #nodeCount: number;
  #sourceCount = 0;

  constructor(nodeCount: number) {
    this.#nodeCount = nodeCount;
  }

  /** How many there are so far. */
  get elementCount(): number {
    return this.#elements.length;
  }

  node(): number {
    return this.#nodeCount++;
  }

  resistor(a: number, b: number, ohms: number): void {
    this.#elements.push({ kind: "resistor", a, b, ohms });
  }

  /** A resistor whose value is given setting by setting as parameter number `parameter`; `ohms` is its value meanwhile. */
  variableResistor(a: number, b: number, ohms: number, parameter: number): void {
    this.#elements.push({ kind: "resistor", a, b, ohms, parameter });
  }

  capacitor(a: number, b: number, farads: number): void {
    if (farads > 0) this.#elements.push({ kind: "capacitor", a, b, farads });
  }

  /** @returns the branch's index, for `mutual`. */
  branch(a: number, b: number, ohms: number, henries: number): number {
    return this.#elements.push({ kind: "branch", a, b, ohms, henries }) - 1;
  }

  /** A branch with an EMF; sources are numbered in the order of these calls. */
  sourceBranch(a: number, b: number, ohms: number, henries: number): number {
    return this.#elements.push({ kind: "branch", a, b, ohms, henries, source: this.#sourceCount++ }) - 1;
  }

  mutual(first: number, second: number, henries: number): void {
    if (henries !== 0) this.#mutuals.push({ first, second, henries });
  }

  build(): Network {
    return {
      nodeCount: this.#nodeCount,
      elements: this.#elements,
      mutuals: this.#mutuals,
      sourceCount: this.#sourceCount,
    };
  }
}
