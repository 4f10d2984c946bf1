import { DisjointSets } from "../disjoint-sets.ts";
import { stampAdmittance } from "./stamp.ts";

/**
 * Resistances between nodes that joints may merge, asked for what an ohmmeter reads. It keeps its memory from one network to the
 * next, since a fault is sought by filling it anew thousands of times.
 */
export class DcSolver {
  readonly #joints: DisjointSets;
  readonly #place: Int32Array;
  readonly #a: Int32Array;
  readonly #b: Int32Array;
  readonly #siemens: Float64Array;
  readonly #source: Int32Array;
  #matrix = new Float64Array(16 * 16);
  #voltage = new Float64Array(16);
  #count = 0;
  #size = 0;

  constructor(nodeCount: number, resistorCount: number) {
    this.#joints = new DisjointSets(nodeCount);
    this.#place = new Int32Array(nodeCount);
    this.#a = new Int32Array(resistorCount);
    this.#b = new Int32Array(resistorCount);
    this.#siemens = new Float64Array(resistorCount);
    this.#source = new Int32Array(resistorCount);
  }

  /** Forgets all joints and resistors. */
  clear(): void {
    this.#joints.clear();
    this.#count = 0;
  }

  join(a: number, b: number): void {
    this.#joints.join(a, b);
  }

  /** Adds a resistor of finite ohms above 0; call after every `join`. @param source where `shares` puts its share */
  add(a: number, b: number, ohms: number, source: number): void {
    const rootA = this.#joints.find(a);
    const rootB = this.#joints.find(b);
    if (rootA === rootB) return;
    const at = this.#count++;
    this.#a[at] = rootA;
    this.#b[at] = rootB;
    this.#siemens[at] = 1 / ohms;
    this.#source[at] = source;
  }

  /**
   * What an ohmmeter between two nodes settles to.
   * @returns ohms; 0 where the nodes are one; Infinity where no direct current can flow
   */
  resistance(from: number, to: number): number {
    const start = this.#joints.find(from);
    const end = this.#joints.find(to);
    this.#size = 0;
    if (start === end) return 0;
    if (!this.#number(start, end)) return Number.POSITIVE_INFINITY;
    this.#assemble();
    this.#solve();
    return this.#voltage[0]!;
  }

  /**
   * Adds to `into[source]`, for every resistor of the last `resistance` asked for, d ln R / d ln r: the share of the power
   * that this resistor takes (Tellegen's theorem).
   */
  shares(ohms: number, into: Float64Array): void {
    if (this.#size === 0) return;
    for (let i = 0; i < this.#count; i++) {
      const placeA = this.#place[this.#a[i]!]!;
      const placeB = this.#place[this.#b[i]!]!;
      if (placeA < -1 || placeB < -1) continue;
      const volts = (placeA < 0 ? 0 : this.#voltage[placeA]!) - (placeB < 0 ? 0 : this.#voltage[placeB]!);
      into[this.#source[i]!]! += (volts * volts * this.#siemens[i]!) / ohms;
    }
  }

  /** Numbers the nodes that hang together with `start`; `end` is the reference (−1), nodes outside are −2. */
  #number(start: number, end: number): boolean {
    const place = this.#place.fill(-2);
    place[start] = 0;
    place[end] = -1;
    let size = 1;
    let reached = false;
    for (let grown = true; grown; ) {
      grown = false;
      for (let i = 0; i < this.#count; i++) {
        const a = this.#a[i]!;
        const b = this.#b[i]!;
        const knowsA = place[a]! >= 0;
        const knowsB = place[b]! >= 0;
        if (knowsA === knowsB) continue;
        const other = knowsA ? b : a;
        if (other === end) reached = true;
        else {
          place[other] = size++;
          grown = true;
        }
      }
    }
    this.#size = size;
    return reached;
  }

  #assemble(): void {
    const size = this.#size;
    if (this.#voltage.length < size) {
      this.#matrix = new Float64Array(size * size);
      this.#voltage = new Float64Array(size);
    }
    const matrix = this.#matrix;
    matrix.fill(0, 0, size * size);
    this.#voltage.fill(0, 0, size);
    this.#voltage[0] = 1;
    for (let i = 0; i < this.#count; i++) {
      const a = this.#place[this.#a[i]!]!;
      const b = this.#place[this.#b[i]!]!;
      stampAdmittance(matrix, size, a, b, this.#siemens[i]!);
    }
  }

  /** Gauss elimination without pivoting: a grounded conductance matrix is positive definite. */
  #solve(): void {
    const size = this.#size;
    const matrix = this.#matrix;
    const x = this.#voltage;
    for (let k = 0; k < size; k++) {
      const diagonal = matrix[k * size + k]!;
      for (let row = k + 1; row < size; row++) {
        const factor = matrix[row * size + k]! / diagonal;
        if (factor === 0) continue;
        for (let column = k + 1; column < size; column++)
          matrix[row * size + column]! -= factor * matrix[k * size + column]!;
        x[row]! -= factor * x[k]!;
      }
    }
    for (let row = size - 1; row >= 0; row--) {
      for (let column = row + 1; column < size; column++) x[row]! -= matrix[row * size + column]! * x[column]!;
      x[row]! /= matrix[row * size + row]!;
    }
  }
}
