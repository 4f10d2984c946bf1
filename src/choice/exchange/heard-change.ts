import type { Build, Part } from "../../build-file/schema.ts";
import { rawSettings, type SettingValue } from "../../build-file/settings.ts";
import type { Drawer, OwnedPart } from "../../drawer/drawer-schema.ts";
import { type Piece, partOfPiece, type Source } from "../../drawer/pieces.ts";
import { MAX_HEARD_EXCHANGES } from "../../limits.ts";
import { cellsOf, volumeDown } from "../buildable/cells.ts";
import type { DriveOf } from "../buildable/hearing.ts";
import type { ComparisonRow, Side } from "../compare/comparison-row.ts";
import { heardRows } from "../compare/heard-rows.ts";
import type { Audibility } from "../compare/verdict.ts";
import { heardDifference } from "../ear/heard-difference.ts";
import { heardSound } from "../ear/heard-sound.ts";
import { energiesFor, Guard, isSilent } from "../guard.ts";
import { exchanged } from "./exchanges.ts";

/** One part of a guard exchanged for another, and where most of it is heard. */
export interface Exchange
  extends Pick<ComparisonRow, "label" | "loudnessDifference" | "largest" | "audible" | "verdict"> {
  /** Of what is heard, which decides. */
  readonly weighed: Pick<ComparisonRow["weighed"], "largest">;
  /** The part's name in the guard. */
  readonly name: string;
  readonly from: Part;
  readonly to: OwnedPart;
  readonly source: Source;
  /** Nothing for what lies there; else its price. */
  readonly cost: number;
  readonly settings: Readonly<Record<string, SettingValue>>;
  /** The guard with it. */
  readonly build: Build;
}

export interface HeardChanges {
  /** Those that are heard side by side, the cheapest first, and of one cost the most different. */
  readonly heard: readonly Exchange[];
  /** How many of those tried nobody hears for sure. */
  readonly unheard: number;
  readonly tried: number;
  /** How many there are to try. */
  readonly possible: number;
}

interface Candidate {
  readonly name: string;
  readonly part: OwnedPart;
  readonly source: Source;
  readonly cost: number;
}

interface Offered {
  readonly part: OwnedPart;
  readonly source: Source;
  readonly cost: number;
}

/** Free pieces and what has a price; of parts alike the cheapest. */
function offeredOf(free: readonly Piece[], { items }: Drawer): Offered[] {
  const all: Offered[] = [
    ...free.map((piece) => ({ part: partOfPiece(piece), source: piece.source, cost: 0 })),
    ...items.flatMap(({ part, price }, item) => (price === undefined ? [] : [{ part, source: { item }, cost: price }])),
  ];
  const cheapest = new Map<string, Offered>();
  for (const offered of all) {
    const key = JSON.stringify(offered.part);
    const known = cheapest.get(key);
    if (!known || offered.cost < known.cost) cheapest.set(key, offered);
  }
  return [...cheapest.values()];
}

/** The setting in which two guards differ most once both are as loud; null where they are silent everywhere. */
function mostDifferent(before: Side, after: Side): number | null {
  let [most, at] = [-1, null as number | null];
  for (const [index, settings] of before.settings.entries()) {
    const [first, second] = [before, after].map(({ guard, drive }) => {
      const transfers = guard.transfers(settings);
      const energies = energiesFor(transfers, drive);
      return isSilent(transfers, drive, energies) ? null : heardSound(energies);
    });
    if (!first || !second) continue;
    const { largest } = heardDifference(first, second);
    if (Math.abs(largest.db) <= most) continue;
    [most, at] = [Math.abs(largest.db), index];
  }
  return at;
}

const isHeard = (audible: Audibility) => audible !== "none" && audible !== "edge";

export interface HeardChangeEffort {
  readonly driveOf: DriveOf;
  readonly checkpoint?: () => void;
  readonly most?: number;
}

/**
 * Every exchange of one part of a guard for one of the drawer or of its price list, and what is heard of it: in every position of every
 * switch with tones at 10 and 0, and with the volume turned down. Heard is what a usual listener tells side by side.
 * @param free what lies there and is not soldered in
 */
export function heardChanges(
  build: Build,
  free: readonly Piece[],
  drawer: Drawer,
  { driveOf, checkpoint = () => {}, most = MAX_HEARD_EXCHANGES }: HeardChangeEffort,
): HeardChanges {
  const sideOf = (of: Build, settings: Side["settings"]): Side => {
    const guard = new Guard(of);
    return { guard, drive: driveOf(guard), settings };
  };
  const { controls } = new Guard(build);
  const volumes = controls.potsWithRole("volume").length > 0 ? [volumeDown(controls)] : [];
  const settings = [...cellsOf(controls).map((cell) => cell.settings), ...volumes];
  const before = sideOf(build, settings);
  const candidates = Object.keys(build.parts).flatMap((name) =>
    offeredOf(free, drawer).flatMap((offered): Candidate[] =>
      build.parts[name]!.kind === offered.part.kind ? [{ name, ...offered }] : [],
    ),
  );
  const heard: Exchange[] = [];
  let [tried, possible] = [0, 0];
  for (const { name, part, source, cost } of candidates) {
    checkpoint();
    const changed = exchanged(build, name, part);
    if (!changed) continue;
    possible++;
    if (tried >= most) continue;
    tried++;
    const after = sideOf(changed, settings);
    const at = mostDifferent(before, after);
    if (at === null) continue;
    const one = [settings[at]!];
    const [found] = heardRows({ ...before, settings: one }, { ...after, settings: one });
    const { label, loudnessDifference, largest, weighed, audible, verdict } = found!.row;
    if (!isHeard(audible)) continue;
    const raw = rawSettings(controls, settings[at]!);
    const exchange = { name, from: build.parts[name]!, to: part, source, cost, settings: raw, build: changed };
    heard.push({
      ...exchange,
      label,
      loudnessDifference,
      largest,
      weighed: { largest: weighed.largest },
      audible,
      verdict,
    });
  }
  const sizeOf = ({ weighed }: Exchange) => Math.abs(weighed.largest.difference);
  const bySize = (a: Exchange, b: Exchange) => sizeOf(b) - sizeOf(a);
  heard.sort((a, b) => a.cost - b.cost || bySize(a, b));
  return { heard, unheard: tried - heard.length, tried, possible };
}
