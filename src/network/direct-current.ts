import { DcSolver } from "./dc-solver.ts";
import type { Network } from "./elements.ts";

/**
 * The network at 0 Hz: capacitors open, inductances shorted, EMFs at rest. Built once, then asked for any two nodes.
 */
export class DirectCurrent {
  readonly #solver: DcSolver;

  constructor({ nodeCount, elements }: Network) {
    const conductors = elements.filter((element) => element.kind !== "capacitor");
    this.#solver = new DcSolver(nodeCount, conductors.length);
    for (const { a, b, ohms } of conductors) if (ohms === 0) this.#solver.join(a, b);
    for (const [index, { a, b, ohms }] of conductors.entries()) if (ohms !== 0) this.#solver.add(a, b, ohms, index);
  }

  /**
   * What an ohmmeter between two nodes settles to.
   * @returns ohms; 0 where the nodes are one; null where no direct current can flow (an open circuit)
   */
  resistanceBetween(first: number, second: number): number | null {
    const ohms = this.#solver.resistance(first, second);
    return ohms === Number.POSITIVE_INFINITY ? null : ohms;
  }
}
