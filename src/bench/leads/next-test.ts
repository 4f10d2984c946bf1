import { type CoilBetween, type CoilOhms, expectedOhms } from "./coil-ohms.ts";
import { doubtsAbout, isRepeated } from "./doubts.ts";
import { chanceOfKick, kickExpected, shownAcross } from "./likelihood.ts";
import { unmeasuredCoils } from "./ohms-at-20.ts";
import { type KickWord, METER_DEVIATION, MISREAD_COMPASS } from "./priors.ts";
import type { Question, Test } from "./question.ts";
import { allTests, ohmsTests, testKey } from "./tests.ts";
import { type Labelling, pathOf } from "./weigh.ts";

export interface Outcome {
  /** "open", "joint", "ohms", "up", "down", "none", "north" or "south" (which end of the needle the row draws). */
  readonly shows: string;
  readonly share: number;
}

export interface NextTest {
  readonly test: Test;
  /** Expected information in bits. */
  readonly bits: number;
  readonly outcomes: readonly Outcome[];
}

/** Labellings that the next test is to tell apart: the likeliest, until so much is covered or there are so many. */
const COVERED = 0.995;
const MOST_LABELLINGS = 4000;
/** A test that is worth less than this is not worth the trouble. */
const LEAST_BITS = 0.02;

export function likeliest(labellings: readonly Labelling[], covered: number, most: number): Labelling[] {
  let sum = 0;
  return labellings.slice(0, most).filter(({ probability }) => {
    const isWanted = sum < covered;
    sum += probability;
    return isWanted;
  });
}

const entropy = (shares: Iterable<number>) => {
  let sum = 0;
  for (const share of shares) if (share > 0) sum -= share * Math.log2(share);
  return sum;
};

/** Width of a class of ln ohms: half of what a hobby meter tells apart. */
const BIN = METER_DEVIATION / 2;
/** Of classes to each side; ±6 deviations of the widest prior, in its own classes. */
const SPREAD = 4;
const MOST_BINS = 80;

/** Shares of the classes that a reading of these coils may fall in: finer where they are known well. */
function binsOf(ohms: CoilOhms, between: CoilBetween, coils: 1 | 2): Map<number, number> {
  const { lnOhms, deviation } = expectedOhms(ohms, between, coils);
  const total = Math.hypot(deviation, METER_DEVIATION);
  const from = Math.floor((lnOhms - SPREAD * total) / BIN);
  const count = Math.ceil((2 * SPREAD * total) / BIN);
  const stride = Math.max(1, Math.ceil(count / MOST_BINS));
  const bins = new Map<number, number>();
  let sum = 0;
  for (let bin = Math.floor(from / stride) * stride; bin <= from + count; bin += stride) {
    const share = Math.exp(-0.5 * (((bin + stride / 2) * BIN - lnOhms) / total) ** 2);
    for (let fine = 0; fine < stride; fine++) bins.set(bin + fine, share);
    sum += share * stride;
  }
  for (const [bin, share] of bins) bins.set(bin, share / sum);
  return bins;
}

interface Told {
  readonly bits: number;
  readonly shares: ReadonlyMap<string, number>;
}

function ohmsTold(test: Extract<Test, { kind: "ohms" }>, labellings: readonly Labelling[], known: BinShelf): Told {
  const shares = new Map<string, number>();
  const groups = new Map<ReadonlyMap<number, number>, number>();
  for (const labelling of labellings) {
    const path = pathOf(labelling, test);
    const shown = shownAcross(path);
    shares.set(shown, (shares.get(shown) ?? 0) + labelling.probability);
    if (shown !== "ohms") continue;
    const bins = known.of(labelling, path.between as CoilBetween);
    groups.set(bins, (groups.get(bins) ?? 0) + labelling.probability);
  }
  const mixed = new Map<number, number>();
  let within = 0;
  for (const [bins, weight] of groups) {
    within += weight * entropy(bins.values());
    for (const [bin, share] of bins) mixed.set(bin, (mixed.get(bin) ?? 0) + weight * share);
  }
  const whole = entropy([...mixed.values(), shares.get("open") ?? 0, shares.get("joint") ?? 0]);
  return { bits: whole - within, shares };
}

/** The classes of readings, worked out once for all labellings that share their coils. */
class BinShelf {
  readonly #known = new Map<CoilOhms, Map<CoilBetween, Map<number, number>>>();

  of({ ohms, structure }: Labelling, between: CoilBetween): Map<number, number> {
    const shelf = this.#known.get(ohms) ?? new Map<CoilBetween, Map<number, number>>();
    this.#known.set(ohms, shelf);
    const bins = shelf.get(between) ?? binsOf(ohms, between, structure.coils);
    shelf.set(between, bins);
    return bins;
  }
}

type Chances = (labelling: Labelling) => readonly (readonly [string, number])[];

function chancesOf(test: Exclude<Test, { kind: "ohms" }>): Chances {
  if (test.kind === "compass")
    return ({ structure, magnets }) => {
      if (test.row >= structure.coils)
        return [
          ["north", 0.5],
          ["south", 0.5],
        ];
      const drawn = (magnets >> test.row) & 1 ? "north" : "south";
      return [
        [drawn, 1 - MISREAD_COMPASS],
        [drawn === "north" ? "south" : "north", MISREAD_COMPASS],
      ];
    };
  const kicks: readonly KickWord[] = ["up", "down", "none"];
  return ({ structure, paths, places, magnets }) => {
    const expected = kickExpected(structure, paths.of(places[test.minus]!, places[test.plus]!), test.row, magnets);
    return kicks.map((kick) => [kick, chanceOfKick(kick, expected)] as const);
  };
}

function wordsTold(test: Exclude<Test, { kind: "ohms" }>, labellings: readonly Labelling[]): Told {
  const shares = new Map<string, number>();
  const chances = chancesOf(test);
  let within = 0;
  for (const labelling of labellings) {
    const own = chances(labelling);
    for (const [word, share] of own) shares.set(word, (shares.get(word) ?? 0) + labelling.probability * share);
    within += labelling.probability * entropy(own.map(([, share]) => share));
  }
  return { bits: entropy(shares.values()) - within, shares };
}

/** Where the leads are known and a coil's resistance is not: the reading that tells it. */
function ohmsTest(question: Question, labelling: Labelling, made: ReadonlySet<string>): NextTest | null {
  const { ohms, structure } = labelling;
  let best: NextTest | null = null;
  if (unmeasuredCoils(labelling).length === 0) return null;
  for (const test of ohmsTests(question.leads.length, false)) {
    const { between } = pathOf(labelling, test);
    if (made.has(testKey(test)) || between === "open" || between === "joint") continue;
    const { deviation } = expectedOhms(ohms, between, structure.coils);
    // What a reading tells of a normal quantity: Shannon's channel with noise.
    const bits = 0.5 * Math.log2(1 + (deviation / METER_DEVIATION) ** 2);
    if (bits > (best?.bits ?? 1)) best = { test, bits, outcomes: [{ shows: "ohms", share: 1 }] };
  }
  return best;
}

/** A labelling this likely may well be the true one: what it takes for misread is worth a second look. Ours, no source. */
const IN_QUESTION = 0.1;

function doubtfulTests(question: Question, labellings: readonly Labelling[]): ReadonlySet<string> {
  const [best] = labellings;
  const inQuestion = labellings.filter((each) => each === best || each.probability >= IN_QUESTION);
  return new Set(
    inQuestion
      .flatMap((each) => doubtsAbout(question, each))
      .filter(({ test }) => !isRepeated(question, test))
      .map(({ test }) => testKey(test)),
  );
}

/** The test not made yet, or made once and in doubt, whose result tells most about which labelling is the true one; null where none tells any. */
export function nextTest(question: Question, labellings: readonly Labelling[]): NextTest | null {
  const listed = likeliest(labellings, COVERED, MOST_LABELLINGS);
  const total = listed.reduce((sum, { probability }) => sum + probability, 0);
  const weighted = listed.map((each) => ({ ...each, probability: each.probability / total }));
  const { ohms, kicks, compass } = question.evidence;
  const doubtful = doubtfulTests(question, labellings);
  const made = new Set([...ohms, ...kicks, ...compass].map(testKey).filter((key) => !doubtful.has(key)));
  const shelf = new BinShelf();
  let best: NextTest | null = null;
  for (const test of allTests(question)) {
    if (made.has(testKey(test))) continue;
    const { bits, shares } = test.kind === "ohms" ? ohmsTold(test, weighted, shelf) : wordsTold(test, weighted);
    if (bits < LEAST_BITS || (best && bits <= best.bits + 1e-6)) continue;
    const outcomes = [...shares].map(([shows, share]) => ({ shows, share })).sort((a, b) => b.share - a.share);
    best = { test, bits, outcomes };
  }
  return best ?? ohmsTest(question, labellings[0]!, made);
}
