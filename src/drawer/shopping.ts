import type { Drawer } from "./drawer-schema.ts";
import type { Need } from "./needs.ts";
import type { Piece } from "./pieces.ts";
import { ShoppingTrip } from "./shopping-trip.ts";
import { cents } from "./single-parts.ts";

/** What is bought of one item or kit. */
export interface Purchase {
  readonly source: { readonly item: number } | { readonly kit: number };
  readonly count: number;
  /** Of one, in the drawer's currency. */
  readonly price: number;
  /** What it is bought for; a kit also holds what nobody asked for. */
  readonly needs: readonly Need[];
}

export interface ShoppingList {
  readonly purchases: readonly Purchase[];
  /** To be bought too, but no price is known. */
  readonly unpriced: readonly Need[];
  /** Of what has a price. */
  readonly total: number;
  /** What lies there already, and what it is taken for. */
  readonly taken: readonly { readonly need: Need; readonly piece: Piece }[];
  /** Free pieces that are not taken, and what is in the kits bought beyond what they are bought for. */
  readonly staysOver: readonly Piece[];
  /** Whether no cheaper way is left; false where the kits can be put together in more ways than were tried. */
  readonly isCheapest: boolean;
  /** In how many ways kits were put together. */
  readonly tried: number;
}

/** Some tenths of a second for the longest lists. */
const USUAL_MOST_WAYS = 1000;

function pushTo<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key) ?? [];
  list.push(value);
  map.set(key, list);
}

/**
 * What to buy so that every need is met at the least sum of known prices, kits and single parts weighed together; what is there
 * already costs nothing. Where no price is known for a part it is listed, and counts for nothing in the sum.
 * @param free what lies there and is not soldered in
 * @param most how many ways of buying kits may be tried
 */
export function shoppingList(
  needs: readonly Need[],
  free: readonly Piece[],
  drawer: Drawer,
  most = USUAL_MOST_WAYS,
): ShoppingList {
  const trip = new ShoppingTrip(needs, free, drawer, most);
  const { columns, pieces, counts } = trip.search();
  const used = new Set(columns);
  const taken: { need: Need; piece: Piece }[] = [];
  const unpriced: Need[] = [];
  const single = new Map<number, { price: number; needs: Need[] }>();
  const ofKits = new Map<number, Need[]>();
  for (const [row, need] of needs.entries()) {
    const column = columns[row]!;
    const piece = pieces[column];
    const { item, price } = trip.singles[row]!;
    if (piece && column < free.length) taken.push({ need, piece });
    else if (piece && "kit" in piece.source) pushTo(ofKits, piece.source.kit, need);
    else if (item === undefined) unpriced.push(need);
    else {
      const known = single.get(item) ?? { price, needs: [] };
      known.needs.push(need);
      single.set(item, known);
    }
  }
  const purchases: Purchase[] = [
    ...[...single].map(([item, { price, needs: served }]) => ({
      source: { item },
      count: served.length,
      price,
      needs: served,
    })),
    ...counts.flatMap((count, kit) =>
      count === 0
        ? []
        : [{ source: { kit }, count, price: cents(drawer.kits[kit]!.price!), needs: ofKits.get(kit) ?? [] }],
    ),
  ];
  return {
    purchases,
    unpriced,
    total: cents(purchases.reduce((sum, { count, price }) => sum + count * price, 0)),
    taken,
    staysOver: pieces.filter((_, index) => !used.has(index)),
    isCheapest: trip.isCheapest,
    tried: trip.tried,
  };
}
