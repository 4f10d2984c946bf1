import { describe, expect, it } from "vitest";
import { type Block, harnessBlocks } from "../../../src/bench/sheet/order/blocks.ts";
import { jointsOf } from "../../../src/bench/sheet/order/joints.ts";
import { ORDER_POINTS, searchOrder } from "../../../src/bench/sheet/order/search-order.ts";
import { piecesOf } from "../../../src/bench/sheet/pieces/pieces.ts";
import { reachOn } from "../../../src/bench/sheet/wire/reach.ts";
import { builds } from "./guards.ts";

function permutations(items: readonly number[]): number[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((first) =>
    permutations(items.filter((item) => item !== first)).map((others) => [first, ...others]),
  );
}

/** The points of an order, counted joint by joint. */
function pointsOf(blocks: readonly Block[], order: readonly number[]): number {
  const joints = order.flatMap((block) => blocks[block]!.joints);
  const at = new Map<number, number[]>();
  for (const [index, { ends }] of joints.entries())
    for (const { piece } of ends) at.set(piece.number, [...(at.get(piece.number) ?? []), index]);
  const hanging = [...at.values()].reduce((sum, indexes) => sum + Math.max(...indexes) - Math.min(...indexes), 0);
  let turned = 0;
  for (const [place, block] of order.entries()) for (const later of order.slice(place + 1)) if (later < block) turned++;
  return ORDER_POINTS.hanging * hanging + ORDER_POINTS.turnedRound * turned;
}

const blocksOf = (build: (typeof builds)[number]["build"]) =>
  harnessBlocks(build, jointsOf(build, piecesOf(build, reachOn(build), 4).pieces));

describe("the order of stages", () => {
  it.each(builds)("of $name has the fewest points of all orders", ({ build }) => {
    const blocks = blocksOf(build);
    const found = searchOrder(blocks);
    const all = permutations(blocks.map((_, index) => index)).map((order) => pointsOf(blocks, order));
    expect(found.isProven).toBe(true);
    expect(found.points).toBe(Math.min(...all));
    expect(pointsOf(blocks, found.order)).toBe(found.points);
  });

  it("says where it gave up, and is an order all the same", () => {
    const blocks = blocksOf(builds.find(({ name }) => name === "hsh-push-pull-splits")!.build);
    const found = searchOrder(blocks, 3);
    expect(found.isProven).toBe(false);
    expect([...found.order].sort()).toEqual(blocks.map((_, index) => index));
  });
});
