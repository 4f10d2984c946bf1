import { describe, expect, it } from "vitest";
import { BoundedMap } from "../../../src/bounded-map.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { BuildShelf, isCustomary } from "../../../src/server/shelves/build-shelf.ts";
import { FrequencyLists } from "../../../src/server/shelves/frequency-lists.ts";
import { hssWithBleed, onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();

interface Answer {
  readonly frequencies: number[];
  readonly curves: readonly { magnitude: number[]; phase: number[]; label: string; active: string[]; hum: number }[];
}

async function ask(payload: object): Promise<string> {
  const reply = await service.app.inject({ method: "POST", url: "/api/response", payload });
  expect(reply.statusCode).toBe(200);
  expect(reply.headers["content-type"]).toBe("application/json; charset=utf-8");
  return reply.body;
}

const numbered = (count: number, name: string, part: object) =>
  Object.fromEntries(Array.from({ length: count }, (_, index) => [`${name}${index}`, part]));
const switches = (count: number, positions: unknown) => numbered(count, "s", { kind: "switch", positions });
const manyPots = (count: number) =>
  onePickup({ parts: numbered(count, "p", { kind: "pot", resistance: "250k", role: "other" }) });
const titled = (title: string) => ({ ...onePickup(), title });

describe("a knob turned again and again", () => {
  it("answers the same whatever was asked before", async () => {
    const turns = [0, 3.7, 10].flatMap((tone) => [1, 2, 4].map((lever) => ({ tone, lever })));
    const questions = [threeSingles(), hssWithBleed()].flatMap((build) =>
      turns.map((settings) => ({ build, settings })),
    );
    const first: string[] = [];
    for (const question of questions) first.push(await ask(question));
    const again: string[] = [];
    for (const question of questions.toReversed()) again.push(await ask(question));
    expect(again.reverse()).toEqual(first);
    expect(new Set(first).size).toBeGreaterThan(turns.length);
  });

  it("answers what the whole sweep does, which a worker computes without any memory", async () => {
    const build = hssWithBleed();
    const axes = { lever: [1, 2, 3, 4, 5], tone: [0, 5.5, 10] };
    const sweep = JSON.parse(await ask({ build, sweep: axes })) as Answer;
    for (const [index, curve] of sweep.curves.entries()) {
      const settings = { lever: axes.lever[Math.floor(index / 3)], tone: axes.tone[index % 3] };
      const one = JSON.parse(await ask({ build, settings })) as Answer;
      expect(one.frequencies).toEqual(sweep.frequencies);
      expect(one.curves).toEqual([curve]);
    }
  });
});

describe("a guard of more parts than any customary one", () => {
  it("is a worker's job, for a single curve too", async () => {
    const jobs = async () => {
      const { body } = await service.app.inject({ method: "GET", url: "/metrics" });
      return Number(/presolder_job_seconds_count\{job="curvesJson",outcome="done"\} (\d+)/.exec(body)?.[1] ?? 0);
    };
    const before = await jobs();
    await ask({ build: manyPots(6), settings: { volume: 5 } });
    expect(await jobs()).toBe(before);
    await ask({ build: manyPots(7), settings: { volume: 5 } });
    expect(await jobs()).toBe(before + 1);
  });
});

describe("isCustomary", () => {
  const coils = (count: number, sections: number) => {
    const loss = Array.from({ length: sections }, (_, i) => ({ resistance: `${20 + i}k`, inductance: 0.2 }));
    const coil = { resistance: "6k", inductance: 2.4, ...(sections > 0 ? { loss } : {}) };
    const more = numbered(count - 1, "p", { kind: "pickup", coils: { coil } });
    return readBuild(onePickup({ pickup: { kind: "pickup", coils: { coil } }, parts: more }));
  };
  const throws = (count: number, positions: number) =>
    readBuild(
      onePickup({
        parts: switches(
          count,
          Array.from({ length: positions }, (_, i) => [["c", `t${i}`]]),
        ),
      }),
    );

  it("counts coils, and loss sections beside them", () => {
    expect([coils(8, 0), coils(8, 1), coils(4, 3), coils(2, 7)].map(isCustomary)).toEqual([true, true, true, true]);
    expect([coils(9, 0), coils(8, 2), coils(4, 4), coils(2, 8)].map(isCustomary)).toEqual([false, false, false, false]);
  });

  it("counts the positions of all switches", () => {
    expect([throws(2, 20), throws(3, 14)].map(isCustomary)).toEqual([true, false]);
  });
});

describe("BuildShelf", () => {
  it("reads a build once, however its text is spaced, and anew once a value changes", () => {
    const shelf = new BuildShelf();
    const reader = shelf.readerOf(onePickup());
    expect(shelf.readerOf(JSON.parse(JSON.stringify(onePickup(), null, 2)))).toBe(reader);
    expect(shelf.readerOf(titled("another"))).not.toBe(reader);
  });

  it("keeps the eight that were asked for last", () => {
    const shelf = new BuildShelf();
    const titles = Array.from({ length: 8 }, (_, index) => `guard ${index}`);
    const readers = titles.map((title) => shelf.readerOf(titled(title)));
    expect(shelf.readerOf(titled("guard 0"))).toBe(readers[0]);
    shelf.readerOf(titled("a ninth"));
    expect(shelf.readerOf(titled("guard 0"))).toBe(readers[0]);
    expect(shelf.readerOf(titled("guard 1"))).not.toBe(readers[1]);
  });

  it("keeps no giant, by parts or by text", () => {
    const shelf = new BuildShelf();
    const positions = Array.from({ length: 24 }, () => [
      ["lug-of-the-left", "lug-of-the-mid", "lug-of-the-right", "lug-of-the-top"],
    ]);
    const wordy = (count: number) => onePickup({ parts: switches(count, positions) });
    for (const giant of [wordy(35), manyPots(7)])
      expect(shelf.readerOf(giant)).not.toBe(shelf.readerOf(JSON.parse(JSON.stringify(giant))));
    expect(JSON.stringify(wordy(35)).length).toBeGreaterThan(50_000);
    expect(shelf.readerOf(manyPots(6))).toBe(shelf.readerOf(manyPots(6)));
  });

  it("refuses a faulty build every time", () => {
    const shelf = new BuildShelf();
    const faulty = { ...onePickup(), wires: [["pickup.hot", "nowhere"]] };
    for (let time = 0; time < 2; time++) expect(() => shelf.readerOf(faulty)).toThrow(/build\.wires\.0/);
  });
});

describe("FrequencyLists", () => {
  it("gives lists as they are asked for, and one object for one spacing", () => {
    const lists = new FrequencyLists();
    const list = lists.listOf({ from: 100, to: 10_000, count: 3 });
    expect([...list.frequenciesHz].map((hz) => +hz.toFixed(6))).toEqual([100, 1000, 10_000]);
    expect(Buffer.from(list.text()).toString()).toBe("[100,1000,10000]");
    expect(lists.listOf({ from: 100, to: 10_000, count: 3 })).toBe(list);
    expect(lists.listOf({ from: 100, to: 10_000, count: 4 })).not.toBe(list);
    expect(Buffer.from(lists.listOf([50, 40]).text()).toString()).toBe("[50,40]");
  });
});

describe("BoundedMap", () => {
  it("forgets its oldest entry, and none where one is written over", () => {
    const map = new BoundedMap<string, number>(2);
    map.set("a", 1).set("b", 2).set("b", 3);
    expect([...map]).toEqual([
      ["a", 1],
      ["b", 3],
    ]);
    map.set("c", 4);
    expect([...map.keys()]).toEqual(["b", "c"]);
  });
});
