import type { Build } from "../../../build-file/schema.ts";
import { Wiring } from "../../../wiring/nets.ts";

/** A lug by its index and name. */
export interface LugAt {
  readonly index: number;
  readonly name: string;
}

/** What every kind of fault is found in: the build, and its wiring by index. */
export interface GuardWiring {
  readonly build: Build;
  /** The lug of that name. */
  readonly lug: (name: string) => LugAt;
  readonly nameAt: (index: number) => string;
  /** Each wire's two lugs, in the build's order. */
  readonly wires: readonly { readonly from: number; readonly to: number }[];
  /** Whether wires alone join two lugs already. */
  readonly joined: (a: number, b: number) => boolean;
  readonly wiresAt: (lug: number) => number;
}

export function guardWiringOf(build: Build): GuardWiring {
  const wiring = new Wiring(build);
  const { lugs } = wiring;
  const { netOfLug } = wiring.wiredNets();
  const wires = build.wires.map((wire) => ({ from: lugs.indexOf(wire.from), to: lugs.indexOf(wire.to) }));
  const wireCounts = new Int32Array(lugs.lugs.length);
  for (const { from, to } of wires) {
    wireCounts[from]!++;
    wireCounts[to]!++;
  }
  return {
    build,
    lug: (name) => ({ index: lugs.indexOf(name), name }),
    nameAt: (index) => lugs.nameAt(index),
    wires,
    joined: (a, b) => netOfLug[a] === netOfLug[b],
    wiresAt: (lug) => wireCounts[lug]!,
  };
}
