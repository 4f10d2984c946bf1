import { assign } from "./assign.ts";
import type { Drawer } from "./drawer-schema.ts";
import type { Need } from "./needs.ts";
import { type Piece, piecesOf } from "./pieces.ts";
import { misfitOf } from "./serves.ts";
import { cents, MISFIT, type Single, singleFor } from "./single-parts.ts";

const NOT_SERVED = 1e12;
/** Two sums of prices that differ by less are the same. */
const SAME_SUM = 1e-9;

/** One way to buy kits, and what then serves each need. */
export interface Way {
  readonly cost: number;
  readonly counts: readonly number[];
  readonly columns: readonly number[];
  readonly pieces: readonly Piece[];
}

/** All ways to buy kits, each with single parts for what is left. */
export class ShoppingTrip {
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
