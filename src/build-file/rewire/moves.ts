import { isCut } from "../connections.ts";
import type { Build, Part } from "../schema.ts";
import type { WireMeans } from "../wire-means.ts";
import type { LugNumber, LugSpace } from "./lug-space.ts";
import type { Join, Source } from "./plan-joins.ts";
import type { Misplaced } from "./sort-strands.ts";
import { type End, isSplice, otherEnd, type Strand } from "./strands.ts";

/**
 * What becomes of the end. `moves`: opened at one lug and made at another; `wire`: its whole wire is taken out, or is new;
 * `part`: it goes out or comes in with its part; `free`: a lead or leg that hangs free afterwards, or did before.
 */
export type Fate = "moves" | "wire" | "part" | "free";

/** One touch of the iron to one end of a strand. */
export interface Move {
  readonly do: "open" | "make";
  /** For an open the strand as it was, for a make as it will be. */
  readonly strand: MovedStrand;
  readonly end: End;
  readonly fate: Fate;
  /** Moves of one key belong together: an end opened and made again, both ends of a wire. */
  readonly key: string;
}

export type MovedStrand = Omit<Strand, "wire"> & {
  /** Index in the wires of the guard as found; null for a wire, lead or leg that joined nothing there. */
  readonly wire: number | null;
};

/** A strand of the guard once rewired, where it is not as found. */
export interface MadeStrand extends MovedStrand {
  /** Index in the wires of the guard as wanted of what it takes after. */
  readonly route: number | undefined;
}

export interface Moves {
  readonly moves: readonly Move[];
  readonly made: readonly MadeStrand[];
}

function fateOfIdle({ strand, idle }: Misplaced, space: LugSpace): Fate {
  if (idle.length === 2) return "wire";
  const opened = idle[0]!;
  const other = otherEnd(opened);
  return space.goesOut(strand.lugs[other]) && !isSplice(strand) ? "part" : "free";
}

/** What a lug's part calls what grows out of it. */
function ownMeans(part: Part | undefined): WireMeans {
  return part?.kind === "pickup" ? "lead" : "leg";
}

function withEnd<T>(pair: readonly [T, T], end: End, value: T): [T, T] {
  return end === 0 ? [value, pair[1]] : [pair[0], value];
}

/** Turns what is to be joined into openings and joints. */
export class MoveWriter {
  readonly #to: Build;
  readonly #space: LugSpace;

  constructor(to: Build, space: LugSpace) {
    this.#to = to;
    this.#space = space;
  }

  write(misplaced: readonly Misplaced[], joins: readonly Join[]): Moves {
    const opens = misplaced.flatMap((each) => this.#opens(each, joins));
    const made = joins.map((join) => this.#made(join));
    const makes = joins.flatMap((join, index) => this.#makes(join, made[index]!, index));
    return { moves: [...opens, ...makes], made };
  }

  #opens(misplaced: Misplaced, joins: readonly Join[]): Move[] {
    const { strand, idle } = misplaced;
    const used = joins.flatMap(({ source }) => (source?.misplaced === misplaced && source.use ? [source.use] : []));
    const ends = used.length === 0 ? idle : [...new Set(used.map(({ opens }) => opens))];
    const fate = used.length === 0 ? fateOfIdle(misplaced, this.#space) : "moves";
    return ends.map((end) => ({ do: "open", strand, end, fate, key: `found ${strand.wire}` }));
  }

  #made({ source, lugs, route }: Join): MadeStrand {
    const rest = { route: route?.wire };
    if (!source) return { wire: null, lugs, grown: [false, false], means: this.#meansOfNew(route, lugs), ...rest };
    const { misplaced, use, means } = source;
    if (!misplaced || !use) return { wire: null, lugs, grown: [true, false], means, ...rest };
    const { strand } = misplaced;
    if (isSplice(strand)) {
      const own = ownMeans(this.#to.parts[this.#partOf(source.lug)]);
      return { wire: strand.wire, lugs, grown: [true, false], means: own, ...rest };
    }
    const ends = withEnd(strand.lugs, use.opens, lugs[1]);
    return { ...strand, lugs: ends, means: this.#meansBetween(means, ends), ...rest };
  }

  #makes({ source }: Join, strand: MadeStrand, index: number): Move[] {
    const make = (end: End, fate: Fate, key: string): Move => ({ do: "make", strand, end, fate, key });
    if (!source) return [make(0, "wire", `new ${index}`), make(1, "wire", `new ${index}`)];
    if (source.misplaced && source.use) {
      const end = isSplice(source.misplaced.strand) ? 1 : source.use.opens;
      return [make(end, "moves", `found ${source.misplaced.strand.wire}`)];
    }
    return [make(1, this.#fateOfLeg(source), `leg ${index}`)];
  }

  #fateOfLeg({ lug }: Source): Fate {
    return this.#space.comesIn(lug) ? "part" : "free";
  }

  #meansOfNew(route: Strand | undefined, lugs: readonly [LugNumber, LugNumber]): WireMeans {
    return route && isCut(route) ? this.#meansBetween(route.means, lugs) : "wire";
  }

  /** A jumper between two parts is a wire. */
  #meansBetween(means: WireMeans, lugs: readonly [LugNumber, LugNumber]): WireMeans {
    return means === "jumper" && this.#partOf(lugs[0]) !== this.#partOf(lugs[1]) ? "wire" : means;
  }

  #partOf(lug: LugNumber): string {
    return this.#space.wantedName(lug).split(".")[0]!;
  }
}
