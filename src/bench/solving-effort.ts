import type { Build } from "../build-file/schema.ts";
import { Controls } from "../build-file/settings.ts";
import { assemblePencil } from "../network/pencil.ts";
import { CircuitMaker } from "../response/circuit.ts";

/** Multiplications that one step may take, about a second's worth; a five-position HSS guard takes a fiftieth. */
export const BUDGET = 1e9;
/** Frequencies listened at, and four real multiplications for each complex one. */
const PER_LISTENING = (6 * 4) / 3;

/** Unknowns of a build's network, at rest. */
export function networkSize(maker: CircuitMaker): number {
  const { network } = maker.circuitIn(new Controls(maker.build).atRest);
  return Math.max(1, assemblePencil(network).size);
}

/** How many settings of such a build can be solved at a handful of frequencies in a second or two. */
export function affordableListenings(build: Build): number {
  return Math.floor((2 * BUDGET) / (PER_LISTENING * networkSize(new CircuitMaker(build)) ** 3));
}
