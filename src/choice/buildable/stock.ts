import type { PartOf, Pickup, Pot } from "../../build-file/schema.ts";
import type { OwnedPart } from "../../drawer/drawer-schema.ts";
import { type Piece, partOfPiece } from "../../drawer/pieces.ts";

/** Parts that are one as good as another: they sound the same and are wired the same. */
export interface Alike<Part> {
  /** The same for parts alike. */
  readonly key: string;
  readonly part: Part;
  readonly count: number;
}

/** Pots of one track; those with a push-pull serve as plain ones too. */
export interface Track extends Alike<Pot> {
  readonly pushPulls: number;
}

/** What a drawer holds for a plan, parts alike together. */
export interface Stock {
  readonly pickups: readonly Alike<Pickup>[];
  readonly tracks: readonly Track[];
  readonly caps: readonly Alike<PartOf<"cap">>[];
  readonly resistors: readonly Alike<PartOf<"resistor">>[];
  /** How many of each selector, by its type. */
  readonly selectors: Readonly<Record<string, number>>;
  /** Two-way switches of two poles that need a hole of their own. */
  readonly smallSwitches: number;
  readonly jacks: number;
}

const keyOf = (value: unknown) => JSON.stringify(value);

/** A pickup without the place it sat in and the name it had there. */
function barePickup({ coils, ...part }: Pickup): Pickup {
  const { label: _label, place: _place, leads: _leads, ...rest } = part;
  const bare = Object.entries(coils).map(([name, { distance: _distance, slant: _slant, ...coil }]) => [name, coil]);
  return { ...rest, coils: Object.fromEntries(bare) } as Pickup;
}

/** What a plan can say of a pot. */
const trackOf = ({ resistance, taper, midpoint, measured, noLoad }: Pot) => ({
  resistance,
  taper,
  midpoint,
  measured,
  noLoad,
});

function together<Part>(parts: readonly Part[], keyed: (part: Part) => string): Alike<Part>[] {
  const known = new Map<string, { key: string; part: Part; count: number }>();
  for (const part of parts) {
    const key = keyed(part);
    const alike = known.get(key);
    if (alike) alike.count++;
    else known.set(key, { key, part, count: 1 });
  }
  return [...known.values()];
}

const isPushPull = ({ drives }: Pot) => drives?.type === "dpdt";

function tracksOf(pots: readonly Pot[]): Track[] {
  // A plan has no pot of two gangs.
  const single = pots.filter(({ gangs }) => gangs === undefined);
  const keyed = (pot: Pot) => keyOf(trackOf(pot));
  return together(single, keyed).map((alike) => ({
    ...alike,
    pushPulls: single.filter((pot) => isPushPull(pot) && keyed(pot) === alike.key).length,
  }));
}

/** @param pieces what lies there and is not soldered in */
export function stockOf(pieces: readonly Piece[]): Stock {
  const parts = pieces.map(partOfPiece);
  const ofKind = <Kind extends OwnedPart["kind"]>(kind: Kind) =>
    parts.filter((part): part is Extract<OwnedPart, { kind: Kind }> => part.kind === kind);
  const selectors: Record<string, number> = {};
  for (const { type } of ofKind("switch")) if (type !== undefined) selectors[type] = (selectors[type] ?? 0) + 1;
  return {
    pickups: together(ofKind("pickup").map(barePickup), keyOf),
    tracks: tracksOf(ofKind("pot")),
    caps: together(ofKind("cap"), ({ capacitance }) => keyOf(capacitance)),
    resistors: together(ofKind("resistor"), ({ resistance }) => keyOf(resistance)),
    selectors,
    smallSwitches: selectors.dpdt ?? 0,
    jacks: ofKind("jack").length,
  };
}
