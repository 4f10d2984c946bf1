import { assign } from "./assign.ts";
import type { Drawer } from "./drawer-schema.ts";
import type { Need } from "./needs.ts";
import { type Piece, piecesOf } from "./pieces.ts";
import { misfitOf } from "./serves.ts";

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

/** Beside prices, which are whole hundredths: first as few parts without a price as can be, then parts that suit. */
const UNPRICED = 1e-5;
const MISFIT = 1e-8;
const NOT_SERVED = 1e12;
/** Two sums of prices that differ by less are the same. */
const SAME_SUM = 1e-9;
const cents = (price: number) => Math.round(price * 100) / 100;

/** The cheapest single part that serves; of equal ones the one that suits best. */
interface Single {
  readonly item: number | undefined;
  readonly price: number;
  readonly cost: number;
}

function singleFor({ part }: Need, items: Drawer["items"]): Single {
  let best: Single = { item: undefined, price: 0, cost: Number.POSITIVE_INFINITY };
  for (const [item, offered] of items.entries()) {
    if (offered.price === undefined) continue;
    const misfit = misfitOf(part, { part: offered.part });
    if (misfit === null) continue;
    const price = cents(offered.price);
    const cost = price + misfit * MISFIT;
    if (cost < best.cost) best = { item, price, cost };
  }
  return best.item === undefined ? { ...best, cost: UNPRICED } : best;
}

interface Way {
  readonly cost: number;
  readonly counts: readonly number[];
  readonly columns: readonly number[];
  readonly pieces: readonly Piece[];
}

class ShoppingTrip {
  readonly singles: readonly Single[];
  tried = 0;
  isCheapest = true;
  best: Way | undefined;
  readonly #needs: readonly Need[];
  readonly #free: readonly Piece[];
  readonly #kits: Drawer["kits"];
  readonly #limits: readonly number[];
  readonly #most: number;

  constructor(needs: readonly Need[], free: readonly Piece[], drawer: Drawer, most: number) {
    this.#needs = needs;
    this.#free = free;
    this.#kits = drawer.kits;
    this.#most = most;
    this.singles = needs.map((need) => singleFor(need, drawer.items));
    const dearest = this.singles.reduce((top, { price }) => Math.max(top, price), 0);
    this.#limits = drawer.kits.map((kit) => this.#mostOf(kit, dearest));
  }

  /** A kit saves at most the dearest single part for each of its pieces that serves anything. */
  #mostOf({ price, content }: Drawer["kits"][number], dearest: number): number {
    if (price === undefined) return 0;
    const serving = content.filter(({ part }) => this.#needs.some((need) => misfitOf(need.part, { part }) !== null));
    const pieces = serving.reduce((sum, { count }) => sum + count, 0);
    return pieces === 0 || cents(price) >= pieces * dearest - SAME_SUM ? 0 : this.#needs.length;
  }

  #piecesWith(counts: readonly number[]): Piece[] {
    const bought = this.#kits.map((kit, index) => ({ ...kit, count: counts[index] ?? 0 }));
    return [...this.#free, ...piecesOf({ items: [], kits: bought }, this.#needs.length)];
  }

  #try(counts: readonly number[], kitCost: number): void {
    this.tried++;
    const pieces = this.#piecesWith(counts);
    const costs = this.#needs.map(({ part }, row) => {
      const line = new Float64Array(pieces.length + this.#needs.length).fill(NOT_SERVED);
      for (const [column, piece] of pieces.entries()) {
        const misfit = misfitOf(part, piece);
        if (misfit !== null) line[column] = misfit * MISFIT;
      }
      line[pieces.length + row] = this.singles[row]!.cost;
      return line;
    });
    const columns = assign(costs);
    const cost = columns.reduce((sum, column, row) => sum + costs[row]![column]!, kitCost);
    if (!this.best || cost < this.best.cost - SAME_SUM) this.best = { cost, counts: [...counts], columns, pieces };
  }

  /** Every number of every kit, fewest first, as long as the kits alone do not cost more than the best way. */
  search(): Way {
    const counts = this.#kits.map(() => 0);
    const from = (index: number, kitCost: number) => {
      if (index === counts.length) {
        if (this.tried >= this.#most) this.isCheapest = false;
        else this.#try(counts, kitCost);
        return;
      }
      const price = cents(this.#kits[index]!.price ?? 0);
      for (let count = 0; count <= this.#limits[index]! && this.isCheapest; count++) {
        const cost = kitCost + count * price;
        if (count > 0 && this.best && cost >= this.best.cost) break;
        counts[index] = count;
        from(index + 1, cost);
      }
      counts[index] = 0;
    };
    from(0, 0);
    return this.best!;
  }
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

/** Some tenths of a second for the longest lists. */
const USUAL_MOST_WAYS = 1000;

function pushTo<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key) ?? [];
  list.push(value);
  map.set(key, list);
}
