import type { Drawer, OwnedPart } from "../../drawer/drawer-schema.ts";
import type { Piece } from "../../drawer/pieces.ts";
import { usualCandidates } from "./candidates.ts";
import { familyKey, spread, type Wirings, wiringsOf } from "./counted.ts";
import type { Family } from "./families.ts";
import { type DriveOf, Hearing } from "./hearing.ts";
import type { BuildableQuestion } from "./question.ts";
import { compareScores, type Score } from "./score.ts";
import { stockOf } from "./stock.ts";
import { type Variant, variants } from "./variants.ts";

/** A part that is not there, and what it would open. */
export interface Purchase {
  readonly part: OwnedPart;
  /** Wirings that the drawer allows with it and does not without. */
  readonly opens: number;
  /** Whether all are counted. */
  readonly isCounted: boolean;
  /** How many of them were heard, one guard each. */
  readonly heard: number;
  /** The best of those heard; null where none was. */
  readonly best: Score | null;
}

interface PurchaseEffort {
  readonly driveOf: DriveOf;
  readonly checkpoint: () => void;
  readonly mostCounted: number;
  readonly candidates: Drawer["items"] | undefined;
}

/** Few enough that the purchases take less time than the guards. */
const SHOWN = 5;
const HEARD_OF_EACH = 20;

interface Opened {
  readonly pieces: readonly Piece[];
  readonly part: OwnedPart;
  readonly isCounted: boolean;
  readonly families: readonly Family[];
}

function openedBy(
  part: OwnedPart,
  question: BuildableQuestion,
  known: ReadonlySet<string>,
  { mostCounted, checkpoint }: PurchaseEffort,
): Opened {
  const piece: Piece = { source: { item: -1 }, part, measured: undefined };
  const pieces = [...question.free, piece];
  const { families, isAll } = wiringsOf(stockOf(pieces), question, mostCounted, checkpoint);
  return { pieces, part, isCounted: isAll, families: families.filter((family) => !known.has(familyKey(family))) };
}

function heardOf({ pieces, part, isCounted, families }: Opened, { driveOf, checkpoint }: PurchaseEffort): Purchase {
  const stock = stockOf(pieces);
  const hearing = new Hearing(driveOf, checkpoint);
  const scores = spread(families, HEARD_OF_EACH).map(
    (family) => hearing.hear(family, variants(family, stock).next().value as Variant, stock).score,
  );
  return { part, opens: families.length, isCounted, heard: scores.length, best: scores.sort(compareScores)[0] ?? null };
}

/**
 * The parts that, bought alone, open the most wirings. Each candidate is tried by itself.
 * @param wirings what the drawer allows as it is
 */
export function purchasesFor(question: BuildableQuestion, wirings: Wirings, effort: PurchaseEffort): Purchase[] {
  const known = new Set(wirings.families.map(familyKey));
  const opened = (effort.candidates ?? usualCandidates())
    .map(({ part }) => openedBy(part, question, known, effort))
    .filter(({ families }) => families.length > 0)
    .sort((a, b) => b.families.length - a.families.length);
  return opened.slice(0, SHOWN).map((each) => heardOf(each, effort));
}
