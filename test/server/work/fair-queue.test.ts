import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FairQueue, LeftTheQueue, type WorkSize } from "../../../src/server/work/fair-queue.ts";

/** A queue on a clock of its own, and work that ends when told. */
class Bench {
  nowMs = 0;
  readonly begun: string[] = [];
  readonly queue: FairQueue;
  readonly #ends = new Map<string, () => void>();

  constructor(places: number) {
    this.queue = new FairQueue(places, () => this.nowMs);
  }

  ask(client: string, size: WorkSize, name: string, signal?: AbortSignal): Promise<void> {
    return this.queue.run({ client, size }, signal, () => {
      this.begun.push(name);
      return new Promise((resolve) => this.#ends.set(name, resolve));
    });
  }

  async end(name: string, tookMs: number): Promise<void> {
    await this.settle();
    this.nowMs += tookMs;
    this.#ends.get(name)!();
    await this.settle();
  }

  settle(): Promise<void> {
    return new Promise((resolve) => setImmediate(resolve));
  }
}

describe("the queue for the workers", () => {
  test("lets one request go before the backlog of a client who came first", async () => {
    const bench = new Bench(1);
    for (const name of ["a1", "a2", "a3"]) void bench.ask("a", "small", name);
    void bench.ask("b", "small", "b1");
    await bench.end("a1", 10);
    expect(bench.begun).toEqual(["a1", "b1"]);
    await bench.end("b1", 30);
    expect(bench.begun).toEqual(["a1", "b1", "a2"]);
  });

  test("shares time and not turns: who takes long gets fewer turns", async () => {
    const bench = new Bench(1);
    for (let n = 0; n < 50; n++) void bench.ask("slow", "small", `slow${n}`);
    for (let n = 0; n < 50; n++) void bench.ask("quick", "small", `quick${n}`);
    for (let n = 0; n < 44; n++) {
      await bench.settle();
      const name = bench.begun.at(-1)!;
      await bench.end(name, name.startsWith("slow") ? 100 : 10);
    }
    const turnsOfSlow = bench.begun.filter((name) => name.startsWith("slow")).length;
    expect(turnsOfSlow).toBeGreaterThanOrEqual(3);
    expect(turnsOfSlow).toBeLessThanOrEqual(6);
  });

  test("remembers what a set has used while it stands between two of its batches", async () => {
    const bench = new Bench(1);
    void bench.ask("set", "large", "batch1");
    void bench.ask("small", "small", "s1");
    await bench.end("batch1", 5_000);
    void bench.ask("set", "large", "batch2");
    void bench.ask("small", "small", "s2");
    await bench.end("s1", 10);
    expect(bench.begun).toEqual(["batch1", "s1", "s2"]);
  });

  test("keeps one place free of large work", async () => {
    const bench = new Bench(3);
    for (const name of ["l1", "l2", "l3"]) void bench.ask(name, "large", name);
    await bench.settle();
    expect(bench.begun).toEqual(["l1", "l2"]);
    void bench.ask("other", "small", "s1");
    await bench.settle();
    expect(bench.begun).toEqual(["l1", "l2", "s1"]);
    await bench.end("l1", 100);
    expect(bench.begun).toEqual(["l1", "l2", "s1", "l3"]);
  });

  test("runs large work where there is one place only", async () => {
    const bench = new Bench(1);
    void bench.ask("a", "large", "l1");
    await bench.settle();
    expect(bench.begun).toEqual(["l1"]);
  });

  test("lets go of work whose client has left, and never begins it", async () => {
    const bench = new Bench(1);
    void bench.ask("a", "small", "a1");
    const gone = new AbortController();
    const left = bench.ask("b", "small", "b1", gone.signal);
    void bench.ask("c", "small", "c1");
    expect(bench.queue.waiting).toBe(2);
    gone.abort();
    await expect(left).rejects.toBeInstanceOf(LeftTheQueue);
    expect(bench.queue.waiting).toBe(1);
    await bench.end("a1", 10);
    expect(bench.begun).toEqual(["a1", "c1"]);
  });

  test("gives back the place of work that fails", async () => {
    const bench = new Bench(1);
    const failing = bench.queue.run({ client: "a", size: "small" }, undefined, () => Promise.reject(new Error("no")));
    await expect(failing).rejects.toThrow("no");
    expect(bench.queue.running).toBe(0);
  });

  test("runs everything once, within its places, whatever comes and leaves", async () => {
    const asked = fc.record({
      client: fc.constantFrom("a", "b", "c"),
      size: fc.constantFrom<WorkSize>("small", "large"),
      turns: fc.integer({ min: 0, max: 3 }),
      leaves: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 4 }), fc.array(asked, { maxLength: 30 }), async (places, all) => {
        const queue = new FairQueue(places);
        let begun = 0;
        let most = 0;
        const ends = all.map(({ client, size, turns, leaves }) => {
          const gone = new AbortController();
          const end = queue.run({ client, size }, gone.signal, async () => {
            begun++;
            most = Math.max(most, queue.running);
            for (let turn = 0; turn < turns; turn++) await Promise.resolve();
          });
          if (leaves) gone.abort();
          return end;
        });
        const results = await Promise.allSettled(ends);
        const fulfilled = results.filter(({ status }) => status === "fulfilled").length;
        expect(begun).toBe(fulfilled);
        expect(fulfilled).toBeGreaterThanOrEqual(all.filter(({ leaves }) => !leaves).length);
        expect(most).toBeLessThanOrEqual(places);
        expect([queue.waiting, queue.running]).toEqual([0, 0]);
      }),
    );
  });
});
