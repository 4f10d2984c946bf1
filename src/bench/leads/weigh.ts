import type { Checkpoint } from "../../checkpoint.ts";
import { type CoilOhms, type CoilReading, coilOhms } from "./coil-ohms.ts";
import { chanceOfKick, kickExpected, lnChanceOfShown, type Shown, shownBy } from "./likelihood.ts";
import { type Path, Paths } from "./paths.ts";
import { HUMBUCKING_JOINT_PRIOR, MISREAD_COMPASS, OPPOSITE_MAGNETS_PRIOR } from "./priors.ts";
import { type Evidence, METAL, type OhmsTest, type Question } from "./question.ts";
import { isFinish, type Structure } from "./structure.ts";
import { leadPlaces, structuresOf } from "./structures.ts";

/** One labelling: a structure, the place of each lead in it, and which rows have south up. Both coils are called forward. */
export interface Labelling {
  readonly structure: Structure;
  readonly paths: Paths;
  /** By lead: its place, −1 where it is joined to nothing. */
  readonly places: readonly number[];
  /** Bit by coil: its top is south. */
  readonly magnets: number;
  readonly ohms: CoilOhms;
  readonly probability: number;
}

/** Less likely than the best by more than e to this is not kept one by one; all of them together are less than a millionth. */
const KEPT_LN = 30;
/** ln of a normal density of deviation 1 at its middle. */
const LN_HIGHEST = -0.5 * Math.log(2 * Math.PI);

export function pathOf({ paths, places }: Pick<Labelling, "paths" | "places">, { a, b }: OhmsTest): Path {
  return b === METAL ? paths.toMetal(places[a]!) : paths.of(places[a]!, places[b]!);
}

function magnetWays(structure: Structure): number[] {
  return structure.coils === 1 ? [0, 1] : [0, 1, 2, 3];
}

/** How common a way for the magnets is, given how the coils are joined. */
function magnetPrior({ coils, arrangement, places }: Structure, magnets: number): number {
  if (coils === 1) return 0.5;
  const areOpposite = magnets === 1 || magnets === 2;
  if (arrangement === "apart") return (areOpposite ? OPPOSITE_MAGNETS_PRIOR : 1 - OPPOSITE_MAGNETS_PRIOR) / 2;
  const [first, second] = places.find(({ ends }) => ends.length === 2)!.ends;
  const cancelsHum = (isFinish(first!) === isFinish(second!)) === (arrangement === "series");
  // A quarter of the ways to join and magnetise two coils is right; the structure's weight is even among the ways to join.
  return areOpposite && cancelsHum ? HUMBUCKING_JOINT_PRIOR : (1 - HUMBUCKING_JOINT_PRIOR) / 3;
}

function lnCompass({ coils }: Structure, { compass }: Evidence, magnets: number): number {
  return compass.reduce((sum, { row, magnet }) => {
    if (row >= coils) return sum - Math.LN2;
    const isSouth = ((magnets >> row) & 1) === 1;
    return sum + Math.log((magnet === "south") === isSouth ? 1 - MISREAD_COMPASS : MISREAD_COMPASS);
  }, 0);
}

/** A reading with what need not be asked of it twice. */
interface Seen {
  readonly a: number;
  readonly b: number;
  readonly shown: Shown;
  readonly lnOhms: number;
  readonly deviation: number;
  /** The most that it can add where coils explain it to the point. */
  readonly most: number;
}

function seenOf({ a, b, ohms, deviation }: Evidence["ohms"][number]): Seen {
  const shown = shownBy(ohms);
  const most = shown === "ohms" ? Math.max(0, LN_HIGHEST - Math.log(deviation)) : 0;
  return { a, b, shown, lnOhms: Math.log(ohms ?? 1), deviation, most };
}

interface Read {
  readonly lnChance: number;
  readonly ohms: CoilOhms;
}

/** Weighs labellings by one set of evidence; what readings say of the coils is worked out once for all that read them alike. */
class Scales {
  readonly #evidence: Evidence;
  readonly #seen: readonly Seen[];
  readonly #most: number;
  readonly #known = new Map<string, CoilOhms>();

  constructor(evidence: Evidence) {
    this.#evidence = evidence;
    this.#seen = evidence.ohms.map(seenOf);
    this.#most = this.#seen.reduce((sum, { most }) => sum + most, 0);
  }

  /** ln of the chance of all readings, and the coils behind them; undefined where that is sure to be under `least`. */
  readings(structure: Structure, paths: Paths, places: readonly number[], least: number): Read | undefined {
    let lnChance = 0;
    const coils: CoilReading[] = [];
    let key = structure.coils === 1 ? "1" : "2";
    for (let index = 0; index < this.#seen.length; index++) {
      const { a, b, shown, lnOhms, deviation } = this.#seen[index]!;
      const { between } = b === METAL ? paths.toMetal(places[a]!) : paths.of(places[a]!, places[b]!);
      if (shown === "ohms" && between !== "open" && between !== "joint") {
        key += `,${index}${between}`;
        coils.push({ lnOhms, deviation, between });
        continue;
      }
      lnChance += lnChanceOfShown(shown, between === "open" || between === "joint" ? between : "ohms");
      if (lnChance + this.#most < least) return undefined;
    }
    const ohms = this.#known.get(key) ?? coilOhms(coils, structure.coils);
    this.#known.set(key, ohms);
    return { lnChance: lnChance + ohms.lnEvidence, ohms };
  }

  kicks(structure: Structure, paths: Paths, places: readonly number[], magnets: number): number {
    return this.#evidence.kicks.reduce(
      (sum, { row, plus, minus, kick }) => {
        const path = paths.of(places[minus]!, places[plus]!);
        return sum + Math.log(chanceOfKick(kick, kickExpected(structure, path, row, magnets)));
      },
      lnCompass(structure, this.#evidence, magnets),
    );
  }
}

type Weighed = Omit<Labelling, "probability"> & { readonly lnWeight: number };

/** Labellings as they are weighed; those far under the best so far are let go. */
class Kept {
  readonly all: Weighed[] = [];
  best = Number.NEGATIVE_INFINITY;

  get least(): number {
    return this.best - KEPT_LN;
  }

  add(weighed: Weighed): void {
    this.best = Math.max(this.best, weighed.lnWeight);
    if (weighed.lnWeight > this.least) this.all.push(weighed);
  }
}

function weighAll(structure: Structure, scales: Scales, kept: Kept): void {
  const paths = new Paths(structure);
  const ways = leadPlaces(structure);
  const lnPrior = Math.log(structure.weight / ways.length);
  const magnetPriors = magnetWays(structure).map((magnets) => Math.log(magnetPrior(structure, magnets)));
  for (const places of ways) {
    const read = scales.readings(structure, paths, places, kept.least - lnPrior);
    if (!read || lnPrior + read.lnChance < kept.least) continue;
    for (const [magnets, lnMagnets] of magnetPriors.entries()) {
      const lnWeight = lnPrior + lnMagnets + read.lnChance + scales.kicks(structure, paths, places, magnets);
      kept.add({ structure, paths, places, magnets, ohms: read.ohms, lnWeight });
    }
  }
}

/** Every labelling with its probability, best first; together they are 1. Those past telling, under e^−30 of the best, are left out. */
export function weigh({ leads, coils, hasMetal, evidence }: Question, { checkpoint }: Checkpoint): Labelling[] {
  const scales = new Scales(evidence);
  const kept = new Kept();
  const structures = coils.flatMap((count) => structuresOf(count, leads.length, hasMetal));
  // The likeliest first: what is far under them need not be weighed out.
  for (const structure of structures.sort((a, b) => b.weight - a.weight)) {
    checkpoint();
    weighAll(structure, scales, kept);
  }
  const { best, least } = kept;
  const likely = kept.all.filter(({ lnWeight }) => lnWeight > least);
  const total = likely.reduce((sum, { lnWeight }) => sum + Math.exp(lnWeight - best), 0);
  return likely
    .map(({ structure, paths, places, magnets, ohms, lnWeight }) => {
      const probability = Math.exp(lnWeight - best) / total;
      return { structure, paths, places, magnets, ohms, probability };
    })
    .sort((a, b) => b.probability - a.probability);
}
