import { DisjointSets } from "../disjoint-sets.ts";
import type { Network } from "./elements.ts";

/**
 * The network at 0 Hz: capacitors open, inductances shorted, EMFs at rest. Built once, then asked for any two nodes.
 */
export class DirectCurrent {
  readonly #joints: DisjointSets;
  readonly #parts: DisjointSets;
  readonly #conductors: { a: number; b: number; siemens: number }[] = [];
  readonly #nodeCount: number;

  constructor(network: Network) {
    this.#nodeCount = network.nodeCount;
    this.#joints = new DisjointSets(network.nodeCount);
    this.#parts = new DisjointSets(network.nodeCount);
    for (const element of network.elements) {
      if (element.kind === "capacitor") continue;
      this.#parts.join(element.a, element.b);
      if (element.ohms === 0) this.#joints.join(element.a, element.b);
    }
    for (const element of network.elements) {
      if (element.kind === "capacitor" || element.ohms === 0) continue;
      const a = this.#joints.find(element.a);
      const b = this.#joints.find(element.b);
      if (a !== b) this.#conductors.push({ a, b, siemens: 1 / element.ohms });
    }
  }

  /**
   * What an ohmmeter between two nodes settles to.
   * @returns ohms; 0 where the nodes are one; null where no direct current can flow (an open circuit)
   */
  resistanceBetween(first: number, second: number): number | null {
    const from = this.#joints.find(first);
    const to = this.#joints.find(second);
    if (from === to) return 0;
    const part = this.#parts.find(first);
    if (part !== this.#parts.find(second)) return null;
    return this.#inject(from, to, part);
  }

  /** Injects 1 A at `from`, takes it out at `to` (held at 0 V), and returns the voltage at `from`. */
  #inject(from: number, to: number, part: number): number {
    const unknown = new Int32Array(this.#nodeCount).fill(-1);
    let size = 0;
    for (let node = 0; node < this.#nodeCount; node++) {
      const isJoint = this.#joints.find(node) === node;
      if (isJoint && node !== to && this.#parts.find(node) === part) unknown[node] = size++;
    }
    const matrix = new Float64Array(size * size);
    for (const { a, b, siemens } of this.#conductors) {
      const i = unknown[a]!;
      const j = unknown[b]!;
      if (i >= 0) matrix[i * size + i]! += siemens;
      if (j >= 0) matrix[j * size + j]! += siemens;
      if (i >= 0 && j >= 0) {
        matrix[i * size + j]! -= siemens;
        matrix[j * size + i]! -= siemens;
      }
    }
    const voltage = new Float64Array(size);
    voltage[unknown[from]!] = 1;
    return solveSymmetric(matrix, voltage, size)[unknown[from]!]!;
  }
}

/** Gauss elimination without pivoting: a grounded conductance matrix is positive definite. */
function solveSymmetric(matrix: Float64Array, x: Float64Array, size: number): Float64Array {
  for (let k = 0; k < size; k++) {
    const diagonal = matrix[k * size + k]!;
    for (let row = k + 1; row < size; row++) {
      const factor = matrix[row * size + k]! / diagonal;
      if (factor === 0) continue;
      for (let column = k; column < size; column++) matrix[row * size + column]! -= factor * matrix[k * size + column]!;
      x[row]! -= factor * x[k]!;
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    for (let column = row + 1; column < size; column++) x[row]! -= matrix[row * size + column]! * x[column]!;
    x[row]! /= matrix[row * size + row]!;
  }
  return x;
}
