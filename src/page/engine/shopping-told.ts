import { describePart } from "../../bench/parts/describe-part.ts";
import { buildSheet } from "../../bench/sheet/build-sheet.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Drawer } from "../../drawer/drawer-schema.ts";
import type { Need } from "../../drawer/needs.ts";
import type { Piece } from "../../drawer/pieces.ts";
import { shoppingList } from "../../drawer/shopping.ts";
import { checkWire, type WireWanted } from "../../drawer/wire-lengths.ts";
import { countedBy } from "./counted-by.ts";
import type { ShoppingLine, ShoppingTold } from "./drawer-answer.ts";

/** Wire that the sheets of these guards cut, by kind and colour. */
function wireOf(builds: readonly Build[]): WireWanted[] {
  const cuts = builds.flatMap((build) => buildSheet(build).cuts);
  return countedBy(cuts, ({ kind, colour }) => `${kind} ${colour}`).map(({ of }) => ({
    kind: of[0]!.kind,
    colour: of[0]!.colour,
    metres: Math.round(of.reduce((sum, { cut }) => sum + cut, 0) * 1000) / 1000,
  }));
}

/** What is to be bought for some guards together, in words. @param names and builds of the guards, by number */
export function shoppingFor(
  needs: readonly Need[],
  free: readonly Piece[],
  drawer: Drawer,
  names: readonly string[],
  builds: readonly Build[],
): ShoppingTold {
  const { purchases, unpriced, total, isCheapest, staysOver } = shoppingList(needs, free, drawer);
  const guardsOf = (served: readonly Need[]) => [...new Set(served.map(({ guard }) => names[guard]!))];
  const bought = purchases.map(({ source, count, price, needs: served }): ShoppingLine => {
    const described =
      "item" in source
        ? describePart(drawer.items[source.item]!.part)
        : { what: `kit: ${drawer.kits[source.kit]!.name}`, code: null };
    return { ...described, count, price, guards: guardsOf(served) };
  });
  const others = countedBy(unpriced, ({ part }) => describePart(part).what).map(
    ({ count, of }): ShoppingLine => ({ ...describePart(of[0]!.part), count, price: null, guards: guardsOf(of) }),
  );
  const over = countedBy(staysOver, ({ part }) => describePart(part).what);
  return {
    lines: [...bought, ...others],
    total,
    isCheapest,
    staysOver: over.map(({ what, count }) => ({ what, count })),
    wire: checkWire(drawer.wires, wireOf(builds)),
  };
}
