import { connectionsOf, detailsOf } from "../connections.ts";
import type { Build, Part, Wire } from "../schema.ts";
import { wireWith } from "../wire-details.ts";
import type { LugNumber, LugSpace } from "./lug-space.ts";
import type { PartMatch } from "./match-parts.ts";
import type { MadeStrand, MovedStrand } from "./moves.ts";
import type { Strand } from "./strands.ts";

type Details = Pick<ReturnType<typeof detailsOf>, "how" | "colour" | "length" | "kind" | "capacitance">;

interface Laid {
  readonly strand: MovedStrand;
  readonly details: Details;
}

/** In the order of the wires as found, what is new after them; and whatever grows from a lug before what is soldered to it. */
function inOrder(laid: readonly Laid[]): Laid[] {
  const place = ({ strand }: Laid) => strand.wire ?? Number.MAX_SAFE_INTEGER;
  const growing = new Map<LugNumber, Laid>();
  for (const each of laid)
    for (const [end, lug] of each.strand.lugs.entries()) if (each.strand.grown[end]) growing.set(lug, each);
  const seen = new Set<Laid>();
  const walk = (each: Laid): Laid[] => {
    if (seen.has(each)) return [];
    seen.add(each);
    const before = each.strand.lugs.flatMap((lug, end) => (each.strand.grown[end] ? [] : (growing.get(lug) ?? [])));
    return [...before.flatMap(walk), each];
  };
  return [...laid].sort((a, b) => place(a) - place(b)).flatMap(walk);
}

function wireOf({ strand, details }: Laid, space: LugSpace, how: Details["how"]): Wire {
  const [from, to] = strand.lugs.map((lug) => space.wantedName(lug)) as [string, string];
  return wireWith(from, to, { ...details, how }) as Wire;
}

/** Wires that read as what they are: a build says `how` only where its reader would take it for something else. */
function readable(to: Build, laid: readonly Laid[], space: LugSpace): Wire[] {
  const said = new Set(laid.filter(({ details }) => details.how !== undefined));
  for (;;) {
    const wires = laid.map((each) => wireOf(each, space, said.has(each) ? each.strand.means : undefined));
    const read = connectionsOf({ ...to, wires });
    const mistaken = laid.filter((each, index) => !said.has(each) && read[index]!.means !== each.strand.means);
    if (mistaken.length === 0) return wires;
    for (const each of mistaken) said.add(each);
  }
}

function partsOf(from: Build, to: Build, { stays }: PartMatch): Build["parts"] {
  return Object.fromEntries(
    Object.entries(to.parts).map(([name, part]) => {
      const old = stays.get(name);
      // What was measured of a part stays true of it.
      return [name, old === undefined ? part : ({ ...from.parts[old], ...part } as Part)];
    }),
  );
}

export interface Rewired {
  readonly kept: readonly Strand[];
  readonly made: readonly MadeStrand[];
  /** Strands of the guard as wanted that come in with their part. */
  readonly inside: readonly Strand[];
}

/** The long form of the guard once rewired: the parts as wanted, and the wires as they lie then. */
export function resultBuild(from: Build, to: Build, match: PartMatch, space: LugSpace, rewired: Rewired): Build {
  const detailsFound = (wire: number): Details => detailsOf(from.wires[wire]!);
  const laid: Laid[] = [
    ...rewired.kept.map((strand) => ({ strand, details: detailsFound(strand.wire) })),
    ...rewired.made.map((strand): Laid => {
      if (strand.wire !== null) return { strand, details: detailsFound(strand.wire) };
      const wanted = strand.route === undefined ? {} : detailsOf(to.wires[strand.route]!);
      return { strand, details: { ...wanted, how: undefined } };
    }),
    ...rewired.inside.map((strand) => ({
      strand: { ...strand, wire: null },
      details: detailsOf(to.wires[strand.wire]!),
    })),
  ];
  return { ...to, parts: partsOf(from, to, match), wires: readable(to, inOrder(laid), space) };
}
