import { layoutOf } from "../../build-file/bodies/layout.ts";
import { lugSpots } from "../../build-file/bodies/lug-spots.ts";
import { apart, type Spot, turnedSpot } from "../../build-file/bodies/spot.ts";
import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { sharedCaps } from "./facing-tones.ts";

/** One end of a wire: a spot in its part's own frame. */
interface WireEnd {
  readonly part: string;
  readonly spot: Spot;
}

export type Turns = ReadonlyMap<string, number>;

/** A cap whose legs reach two tones hangs between them. */
function withSharedCaps(build: Build, middles: ReadonlyMap<string, Spot>): ReadonlyMap<string, Spot> {
  const shared = sharedCaps(build).map(([cap, [a, b]]): [string, Spot] => {
    const [one, other] = [middles.get(a)!, middles.get(b)!];
    return [cap, { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 }];
  });
  return new Map([...middles, ...shared]);
}

/** The straight lengths of a guard's wires, lug to lug, for parts turned one way or another. Nothing but turns is moved. */
export class WireLengths {
  readonly #middles: ReadonlyMap<string, Spot>;
  readonly #wires: readonly (readonly [WireEnd, WireEnd])[];
  readonly #wiresAt = new Map<string, number[]>();

  constructor(build: Build) {
    this.#middles = withSharedCaps(build, layoutOf(build));
    const table = new LugTable(build.parts);
    const spots = new Map(Object.entries(build.parts).map(([name, part]) => [name, lugSpots(part)]));
    const endAt = (name: string): WireEnd => {
      const { part, local } = table.lugs[table.indexOf(name)]!;
      return { part, spot: spots.get(part)!.get(local)! };
    };
    // Within one part a wire is as long whichever way the part is turned.
    const ends = build.wires.map(({ from, to }) => [endAt(from), endAt(to)] as const);
    this.#wires = ends.filter(([a, b]) => a.part !== b.part);
    for (const [index, wire] of this.#wires.entries())
      for (const { part } of wire) this.#wiresAt.set(part, [...(this.#wiresAt.get(part) ?? []), index]);
  }

  /** Metres, of all wires between parts. */
  total(turns: Turns): number {
    return this.#wires.reduce((sum, _, index) => sum + this.#length(index, turns), 0);
  }

  /** Whether a pot's lugs point towards another part: within 60°. */
  isFacing(pot: string, other: string, turns: Turns): boolean {
    const [from, to] = [this.#middles.get(pot)!, this.#middles.get(other)!];
    const away = apart(from, to);
    if (away === 0) return false;
    const ahead = turnedSpot({ x: 0, y: -1 }, turns.get(pot) ?? 0);
    return (ahead.x * (to.x - from.x) + ahead.y * (to.y - from.y)) / away >= 0.5 - 1e-9;
  }

  /** Metres, of the wires of one part. */
  ofPart(part: string, turns: Turns): number {
    return (this.#wiresAt.get(part) ?? []).reduce((sum, index) => sum + this.#length(index, turns), 0);
  }

  #length(index: number, turns: Turns): number {
    const [a, b] = this.#wires[index]!;
    return apart(this.#at(a, turns), this.#at(b, turns));
  }

  #at({ part, spot }: WireEnd, turns: Turns): Spot {
    const { x, y } = turnedSpot(spot, turns.get(part) ?? 0);
    const middle = this.#middles.get(part)!;
    return { x: middle.x + x, y: middle.y + y };
  }
}
