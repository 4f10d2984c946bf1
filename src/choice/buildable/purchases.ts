import type { Drawer, OwnedPart } from "../../drawer/drawer-schema.ts";
import type { Piece } from "../../drawer/pieces.ts";
import { usualCandidates } from "./candidates.ts";
import { familyKey, spread, type Wirings, wiringsOf } from "./counted.ts";
import { type DriveOf, Hearing } from "./hearing.ts";
import type { BuildableQuestion } from "./question.ts";
import { compareScores, type Score } from "./score.ts";
import { type Stock, stockOf } from "./stock.ts";
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
/** How many times as many wirings are counted with a part more, since it is what they differ by that is asked. */
const MORE = 5;
const HEARD_OF_EACH = 20;

interface Opened {
  readonly part: OwnedPart;
  readonly stock: Stock;
  readonly wirings: Wirings;
  readonly opens: number;
}

/** What the drawer allows it allows with a part more too. */
function openedBy(part: OwnedPart, question: BuildableQuestion, known: Wirings, effort: PurchaseEffort): Opened {
  const piece: Piece = { source: { item: -1 }, part, measured: undefined };
  const stock = stockOf([...question.free, piece]);
  const wirings = wiringsOf(stock, question, MORE * effort.mostCounted, effort.checkpoint);
  return { part, stock, wirings, opens: wirings.count - known.count };
}

function heardOf(
  { part, stock, wirings, opens }: Opened,
  known: ReadonlySet<string>,
  effort: PurchaseEffort,
): Purchase {
  const hearing = new Hearing(effort.driveOf, effort.checkpoint);
  const opened = wirings.families.filter((family) => !known.has(familyKey(family)));
  const scores = spread(opened, HEARD_OF_EACH).map(
    (family) => hearing.hear(family, variants(family, stock).next().value as Variant, stock).score,
  );
  const best = scores.sort(compareScores)[0] ?? null;
  return { part, opens, isCounted: wirings.isAll, heard: scores.length, best };
}

/**
 * The parts that, bought alone, open the most wirings. Each candidate is tried by itself.
 * @param wirings what the drawer allows as it is
 */
export function purchasesFor(question: BuildableQuestion, wirings: Wirings, effort: PurchaseEffort): Purchase[] {
  if (!wirings.isAll) return [];
  const opened = (effort.candidates ?? usualCandidates())
    .map(({ part }) => openedBy(part, question, wirings, effort))
    .filter(({ opens }) => opens > 0)
    .sort((a, b) => b.opens - a.opens);
  const known = new Set(wirings.families.map(familyKey));
  return opened.slice(0, SHOWN).map((each) => heardOf(each, known, effort));
}
