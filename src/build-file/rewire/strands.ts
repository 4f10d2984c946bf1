import type { Connection } from "../connections.ts";
import type { WireMeans } from "../wire-means.ts";
import type { LugNumber } from "./lug-space.ts";

export type End = 0 | 1;

/** A wire, leg or lead between two lugs. */
export interface Strand {
  /** Index in its build's wires. */
  readonly wire: number;
  readonly lugs: readonly [LugNumber, LugNumber];
  /** Whether it grows out of its lug there, with nothing to solder. */
  readonly grown: readonly [boolean, boolean];
  readonly means: WireMeans;
}

export function strandsOf(connections: readonly Connection[], lugOf: (name: string) => LugNumber): Strand[] {
  return connections.map(({ number, from, to, means, grownFrom }) => ({
    wire: number - 1,
    lugs: [lugOf(from), lugOf(to)],
    grown: [grownFrom.includes(from), grownFrom.includes(to)],
    means,
  }));
}

export function otherEnd(end: End): End {
  return end === 0 ? 1 : 0;
}

/** Whether both its ends grow from lugs: leads twisted together, or a joint inside a part. */
export function isSplice({ grown }: Strand): boolean {
  return grown[0] && grown[1];
}
