import type { Drawer, OwnedPart } from "./drawer-schema.ts";

/** Where a piece lies: an item of the drawer, or a kit that is opened for it. */
export type Source = { readonly item: number } | { readonly kit: number; readonly content: number };

/** One thing in the drawer that can be taken out once. */
export interface Piece {
  readonly source: Source;
  readonly part: OwnedPart;
  /** Farads or ohms, where this very piece was measured. */
  readonly measured: number | undefined;
}

/**
 * Every piece of the drawer, items before kits. Of parts alike no more than could ever be asked for.
 * @param most how many of one kind are worth telling apart
 */
export function piecesOf(drawer: Pick<Drawer, "items" | "kits">, most: number): Piece[] {
  const ofItems = drawer.items.flatMap(({ part, count, measured }, item) => {
    const plain = Math.min(most, count - measured.length);
    return [...measured, ...Array.from({ length: plain }, () => undefined)].map(
      (value): Piece => ({ source: { item }, part, measured: value }),
    );
  });
  const ofKits = drawer.kits.flatMap((kit, index) =>
    kit.content.flatMap(({ part, count }, content) =>
      Array.from(
        { length: Math.min(most, count * kit.count) },
        (): Piece => ({ source: { kit: index, content }, part, measured: undefined }),
      ),
    ),
  );
  return [...ofItems, ...ofKits];
}

/** A piece as a part that says what it was measured as, so that a guard made of it sounds like it. */
export function partOfPiece({ part, measured }: Pick<Piece, "part" | "measured">): OwnedPart {
  if (measured === undefined) return part;
  if (part.kind === "cap") return { ...part, capacitance: measured };
  if (part.kind === "resistor") return { ...part, resistance: measured };
  return part.kind === "pot" ? { ...part, measured } : part;
}
