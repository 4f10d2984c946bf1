import { describe, expect, test } from "vitest";
import { drawerSchema } from "../../../src/drawer/drawer-schema.ts";
import { drawerInput, EMPTY_DRAWER, type KeptDrawer, keptFrom } from "../../../src/drawer/kept-drawer.ts";
import { takeIn, withoutTaken, withTaken } from "../../../src/page/drawer/taken-parts.ts";
import { type GuardPartsTold, guardPartsTold, type PartsTold } from "../../../src/page/engine/guard-parts-told.ts";

const PLAN = {
  layout: "lever-5-two-tone",
  volume: "250k",
  tones: [
    { pot: "250k", pickups: ["neck"] },
    { pot: "250k", pickups: ["middle"] },
  ],
  sharedCap: "22n",
  pickups: { bridge: "single-vintage", middle: "single-vintage-rwrp", neck: "single-vintage" },
};
const FILE = JSON.stringify({ presolder: 1, plan: PLAN });
const READINGS = [
  { id: "2", date: "2026-03-02", note: "", values: [{ what: "Cap", read: "21.4n" }] },
  {
    id: "1",
    date: "2026-03-01",
    note: "",
    values: [
      { what: "cap", read: "20.9n" },
      { what: "volume", read: "open" },
      { what: "jack, lever 1", read: "7.94k" },
    ],
  },
];

function ask(drawer: KeptDrawer, file = FILE): GuardPartsTold {
  const guards = [{ name: "A", file, isSoldered: false, isOnList: false }];
  const reply = guardPartsTold({ drawer: drawerInput(drawer), guards, index: 0, readings: READINGS });
  if ("faults" in reply) throw new Error(JSON.stringify(reply.faults));
  return reply;
}

let last = 0;
const id = () => String(last++);
const forItems = ({ items }: KeptDrawer, told: readonly PartsTold[]) =>
  told.map((each) => ({ ...each, item: each.item === undefined ? undefined : items[each.item]!.id }));
const sumOf = (told: readonly PartsTold[]) => told.reduce((sum, { count }) => sum + count, 0);

describe("a guard's parts", () => {
  const all = ask(EMPTY_DRAWER);

  test("are all uncounted beside an empty drawer, each with what was read of it last", () => {
    expect(all.counted).toEqual([]);
    const caps = all.uncounted.filter(({ part }) => part.kind === "cap");
    expect(caps).toEqual([expect.objectContaining({ count: 1, measured: [21.4e-9], item: undefined })]);
    const pickups = all.uncounted.filter(({ part }) => part.kind === "pickup");
    expect(sumOf(pickups)).toBe(3);
    expect(all.uncounted.filter(({ part }) => part.kind === "pot").map(({ measured }) => measured)).toEqual([[]]);
    for (const { part } of all.uncounted)
      expect(Object.keys(part)).not.toEqual(
        expect.arrayContaining([expect.stringMatching(/^(label|place|leads|role)$/)]),
      );
  });

  test("make a drawer that is read, and that has every one of them once, however often they are taken in", () => {
    const once = withTaken(EMPTY_DRAWER, takeIn(EMPTY_DRAWER, forItems(EMPTY_DRAWER, all.uncounted), id));
    const read = drawerSchema.parse(drawerInput(once));
    expect(read.items.reduce((sum, { count }) => sum + count, 0)).toBe(sumOf(all.uncounted));
    const again = ask(once);
    expect(again.uncounted).toEqual([]);
    expect(sumOf(again.counted)).toBe(sumOf(all.uncounted));
  });

  test("go to the item of the same part, and out again, whatever was changed by hand meanwhile", () => {
    const items = [
      { part: { kind: "pot" as const, resistance: "250k", taper: "audio" as const }, count: 1, price: 7 },
      { part: { kind: "jack" as const }, count: 1 },
    ];
    const drawer = keptFrom({ items }, id);
    const { uncounted, counted } = ask(drawer);
    expect(counted.map(({ part, count }) => [part.kind, count])).toEqual([
      ["pot", 1],
      ["jack", 1],
    ]);
    const taken = takeIn(drawer, forItems(drawer, uncounted), id);
    const now = withTaken(drawer, taken);
    expect(now.items[0]).toMatchObject({
      ...items[0],
      count: 1 + all.uncounted.find(({ part }) => part.kind === "pot")!.count - 1,
    });
    const rest = takeIn(now, forItems(drawer, counted), id);
    const both = withTaken(now, rest);
    expect(both.items.find(({ part }) => part.kind === "jack")!.count).toBe(2);
    expect(withoutTaken(withoutTaken(both, rest), taken)).toEqual(drawer);
    const byHand = { ...now, items: now.items.map((item, index) => (index === 0 ? { ...item, price: 8 } : item)) };
    const undone = withoutTaken(byHand, taken);
    expect(undone.items[0]).toEqual(byHand.items[0]);
    expect(undone.items).toHaveLength(2);
  });

  test("of a guard whose pot says what it measures keep that value", () => {
    const tones = [{ pot: "500k", measured: "463k", cap: "22n" }];
    const plan = { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones };
    const pots = ask(EMPTY_DRAWER, JSON.stringify({ presolder: 1, plan })).uncounted.filter(
      ({ part }) => part.kind === "pot",
    );
    expect(pots.flatMap(({ measured }) => measured)).toEqual([463e3]);
    for (const { part } of pots) expect(part).not.toHaveProperty("measured");
  });
});
