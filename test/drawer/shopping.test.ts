import { describe, expect, test } from "vitest";
import type { Drawer } from "../../src/drawer/drawer-schema.ts";
import type { Need } from "../../src/drawer/needs.ts";
import { type Piece, piecesOf } from "../../src/drawer/pieces.ts";
import { misfitOf } from "../../src/drawer/serves.ts";
import { shoppingList } from "../../src/drawer/shopping.ts";
import { Random } from "../random.ts";
import { cap, drawerOf, needs, pot } from "./drawers.ts";

/**
 * The least sum by trying every source for every need, one after another: a free piece, a single part at any price, a place in
 * any kit, or, where no single part has a price, a part without one. Kits are counted by their fullest content.
 */
function leastSum(all: readonly Need[], free: readonly Piece[], { items, kits }: Drawer): number {
  const used = new Set<number>();
  const inKits = kits.map(({ content }) => content.map(() => 0));
  const kitSum = () =>
    kits.reduce((sum, { price, content }, kit) => {
      const boxes = Math.max(...content.map(({ count }, c) => Math.ceil(inKits[kit]![c]! / count)));
      return sum + boxes * (price ?? 0);
    }, 0);
  const from = (index: number, paid: number): number => {
    const need = all[index];
    if (!need) return paid + kitSum();
    let best = Number.POSITIVE_INFINITY;
    for (const [i, piece] of free.entries()) {
      if (used.has(i) || misfitOf(need.part, piece) === null) continue;
      used.add(i);
      best = Math.min(best, from(index + 1, paid));
      used.delete(i);
    }
    const serving = items.filter(
      (item) => item.price !== undefined && misfitOf(need.part, { part: item.part }) !== null,
    );
    for (const { price } of serving) best = Math.min(best, from(index + 1, paid + price!));
    if (serving.length === 0) best = Math.min(best, from(index + 1, paid));
    for (const [kit, { content, price }] of kits.entries()) {
      for (const [c, held] of content.entries()) {
        if (price === undefined || misfitOf(need.part, held) === null) continue;
        inKits[kit]![c]!++;
        best = Math.min(best, from(index + 1, paid));
        inKits[kit]![c]!--;
      }
    }
    return best;
  };
  return from(0, 0);
}

const OFFERED = [cap("22n"), cap("47n"), pot("250k"), pot("500k"), pot("250k", { drives: "dpdt" })];

function anyDrawer(random: () => number): Drawer {
  const some = () => OFFERED[Math.floor(random() * OFFERED.length)]!;
  const price = () => (random() < 0.8 ? { price: Math.ceil(random() * 40) / 4 } : {});
  return drawerOf({
    items: OFFERED.map((each) => ({ part: each, count: Math.floor(random() * 2), ...price() })),
    kits: Array.from({ length: 2 }, (_, index) => ({
      name: `kit ${index}`,
      count: 0,
      ...price(),
      content: [
        { part: some(), count: 1 + Math.floor(random() * 2) },
        { part: some(), count: 1 },
      ],
    })),
  });
}

describe("the shopping list", () => {
  test("costs as little as every way tried one by one", () => {
    const source = new Random(11);
    const random = () => source.next();
    for (let trial = 0; trial < 150; trial++) {
      const drawer = anyDrawer(random);
      const wanted = needs(
        ...Array.from({ length: 1 + Math.floor(random() * 4) }, () => OFFERED[Math.floor(random() * 4)]!),
      );
      const free = piecesOf(drawer, wanted.length);
      const list = shoppingList(wanted, free, drawer);
      expect(list.isCheapest).toBe(true);
      expect(list.total).toBeCloseTo(leastSum(wanted, free, drawer), 9);
      const served = list.purchases.reduce((sum, { needs: ofIt }) => sum + ofIt.length, 0);
      expect(served + list.taken.length + list.unpriced.length).toBe(wanted.length);
    }
  });

  const caps = { part: cap("22n"), count: 0, price: 2 };
  const pots = { part: pot("250k"), count: 0, price: 7 };
  const kit = {
    name: "three pots and a cap",
    count: 0,
    price: 15,
    content: [{ part: pot("250k"), count: 3 }, { part: cap("22n") }],
  };

  test("takes a kit where its price is under that of the parts, and says what of it stays over", () => {
    const drawer = drawerOf({ items: [caps, pots], kits: [kit] });
    const list = shoppingList(needs(pot("250k"), pot("250k"), cap("22n")), [], drawer);
    expect(list.total).toBe(15);
    expect(list.purchases).toMatchObject([{ source: { kit: 0 }, count: 1, needs: [{}, {}, {}] }]);
    expect(list.staysOver.map(({ part: { kind } }) => kind)).toEqual(["pot"]);
  });

  test("takes single parts where the kit is dearer", () => {
    const drawer = drawerOf({ items: [caps, pots], kits: [{ ...kit, price: 17 }] });
    expect(shoppingList(needs(pot("250k"), pot("250k"), cap("22n")), [], drawer)).toMatchObject({
      total: 16,
      purchases: [
        { source: { item: 1 }, count: 2 },
        { source: { item: 0 }, count: 1 },
      ],
      staysOver: [],
    });
  });

  test("lists what has no price, and buys no kit for it", () => {
    const drawer = drawerOf({ items: [caps], kits: [{ ...kit, price: 3 }] });
    const list = shoppingList(needs(pot("250k"), cap("22n")), [], drawer);
    expect(list).toMatchObject({ total: 2, unpriced: [{ name: "part1" }] });
  });

  test("says when not every way of buying kits was tried", () => {
    const drawer = drawerOf({ items: [caps, pots], kits: [kit, { ...kit, name: "another", price: 14 }] });
    const list = shoppingList(needs(pot("250k"), pot("250k"), pot("250k")), [], drawer, 1);
    expect(list).toMatchObject({ isCheapest: false, tried: 1, total: 21 });
  });
});
