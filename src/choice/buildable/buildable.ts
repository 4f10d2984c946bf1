import type { Drawer } from "../../drawer/drawer-schema.ts";
import { needsOf } from "../../drawer/needs.ts";
import type { Piece } from "../../drawer/pieces.ts";
import { takePieces } from "../../drawer/take.ts";
import { MAX_COUNTED_WIRINGS, MAX_HEARD_GUARDS } from "../../limits.ts";
import { type Counted, countGuards, spread, type Wirings, wiringsOf } from "./counted.ts";
import type { Family } from "./families.ts";
import { type DriveOf, type HeardGuard, Hearing } from "./hearing.ts";
import { type Purchase, purchasesFor } from "./purchases.ts";
import type { BuildableQuestion } from "./question.ts";
import { compareScores } from "./score.ts";
import { type Stock, stockOf } from "./stock.ts";
import { type Variant, variants } from "./variants.ts";

export interface BuildableEffort {
  readonly driveOf: DriveOf;
  /** Called between guards; may throw to give the work up. */
  readonly checkpoint?: () => void;
  /** How many guards may be heard. */
  readonly most?: number;
  readonly mostCounted?: number;
  /** Parts to try as the one purchase; absent: the catalogue's. */
  readonly candidates?: Drawer["items"];
}

/** The best guard of one wiring. */
export interface FoundGuard extends HeardGuard {
  /** How many guards the wiring makes with other pots, caps and tones, and how many of them were heard. */
  readonly guards: number;
  readonly heard: number;
  /** What of the drawer it leaves. */
  readonly staysOver: readonly Piece[];
}

export interface Buildable {
  readonly wirings: Counted;
  readonly guards: Counted;
  /** How many guards were heard, and whether that was all of them. */
  readonly heard: number;
  readonly isExhaustive: boolean;
  readonly method: string;
  /** The best guard of each of the best wirings, best first, at most twelve. */
  readonly best: readonly FoundGuard[];
  /** Single parts that would open more wirings, the most first. */
  readonly purchases: readonly Purchase[];
}

const BEST_COUNT = 12;
/** Of the guards heard in a large drawer; the rest of them are others of the best wirings. */
const FOR_WIRINGS = 0.8;

interface Ranked {
  readonly family: Family;
  best: HeardGuard;
  heard: number;
}

/** Among equals the guard of fewer parts, then the one found first. */
const isBetter = (a: HeardGuard, b: HeardGuard) => (compareScores(a.score, b.score) || a.parts - b.parts) < 0;

function rank(all: readonly Ranked[]): Ranked[] {
  return all.toSorted((a, b) => compareScores(a.best.score, b.best.score) || a.best.parts - b.best.parts);
}

/** Further guards of the best wirings first, until all are heard or no more may be. */
function hearRest(ranked: readonly Ranked[], stock: Stock, hearing: Hearing, most: number): void {
  for (const entry of ranked) {
    const rest: Generator<Variant> = variants(entry.family, stock);
    rest.next();
    for (const variant of rest) {
      if (hearing.heard >= most) return;
      const guard = hearing.hear(entry.family, variant, stock);
      entry.heard++;
      if (isBetter(guard, entry.best)) entry.best = guard;
    }
  }
}

function hearWirings({ families }: Wirings, stock: Stock, hearing: Hearing, most: number): Ranked[] {
  return spread(families, most).map((family) => {
    const first = variants(family, stock).next().value as Variant;
    return { family, best: hearing.hear(family, first, stock), heard: 1 };
  });
}

function staysOver(guard: HeardGuard, free: readonly Piece[]): Piece[] {
  const taken = new Set(takePieces(needsOf(guard.build), free));
  return free.filter((_, index) => !taken.has(index));
}

const counted = ({ count, isAll }: Counted) => `${isAll ? "" : "more than "}${count.toLocaleString("en")}`;

function methodWords(wirings: Counted, guards: Counted, heard: number, looked: number, isExhaustive: boolean): string {
  if (isExhaustive) return guards.count === 1 ? "the one guard was heard" : `all ${counted(guards)} guards were heard`;
  const every =
    looked === wirings.count && wirings.isAll ? "every" : `${looked.toLocaleString("en")} of ${counted(wirings)}`;
  return (
    `${heard.toLocaleString("en")} of ${counted(guards)} guards were heard: one of ${every} wiring${every === "every" ? "" : "s"}` +
    " first, then others of the best with other pots, caps and tones; a better one may have been missed"
  );
}

/**
 * Every guard that the parts allow, the best first: layouts, pickups in their places, what switches do to them, pots, tones, caps and
 * treble bleeds. Of parts alike, which is which makes no guard of its own; nor does which switch works what.
 */
export function buildable(question: BuildableQuestion, effort: BuildableEffort): Buildable {
  const { driveOf, checkpoint = () => {}, most = MAX_HEARD_GUARDS, mostCounted = MAX_COUNTED_WIRINGS } = effort;
  const stock = stockOf(question.free);
  const wirings = wiringsOf(stock, question, mostCounted, checkpoint);
  const guards = countGuards(wirings, stock);
  const hearing = new Hearing(driveOf, checkpoint);
  const isSmall = guards.isAll && guards.count <= most;
  const ranked = hearWirings(wirings, stock, hearing, isSmall ? most : Math.ceil(FOR_WIRINGS * most));
  hearRest(rank(ranked), stock, hearing, most);
  const { heard } = hearing;
  const isExhaustive = guards.isAll && heard === guards.count;
  const best = rank(ranked)
    .slice(0, BEST_COUNT)
    .map(
      ({ family, best: guard, heard: own }): FoundGuard => ({
        ...guard,
        guards: [...variants(family, stock)].length,
        heard: own,
        staysOver: staysOver(guard, question.free),
      }),
    );
  return {
    wirings: { count: wirings.count, isAll: wirings.isAll },
    guards,
    heard,
    isExhaustive,
    method: methodWords(wirings, guards, heard, ranked.length, isExhaustive),
    best,
    purchases: purchasesFor(question, wirings, { driveOf, checkpoint, mostCounted, candidates: effort.candidates }),
  };
}
