import type { Drawer } from "./drawer-schema.ts";
import type { Need } from "./needs.ts";
import { misfitOf } from "./serves.ts";

/** Beside prices, which are whole hundredths: first as few parts without a price as can be, then parts that suit. */
const UNPRICED = 1e-5;
export const MISFIT = 1e-8;
/** A price in whole hundredths. */
export const cents = (price: number) => Math.round(price * 100) / 100;

/** The cheapest single part that serves; of equal ones the one that suits best. */
export interface Single {
  readonly item: number | undefined;
  readonly price: number;
  readonly cost: number;
}

export function singleFor({ part }: Need, items: Drawer["items"]): Single {
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
