import type { CDPSession, Page } from "playwright-core";
import { WorkerSessions } from "./worker-sessions.ts";

export interface Memory {
  readonly heapBytes: number;
  readonly workerHeapBytes: number;
  readonly nodes: number;
}

/** Reads what a page holds after a collection of garbage, its workers counted apart. */
export class MemoryMeter {
  readonly #session: CDPSession;
  readonly #workers: WorkerSessions;

  static async attach(page: Page): Promise<MemoryMeter> {
    return new MemoryMeter(await page.context().newCDPSession(page), await WorkerSessions.follow(page));
  }

  private constructor(session: CDPSession, workers: WorkerSessions) {
    this.#session = session;
    this.#workers = workers;
  }

  async read(): Promise<Memory> {
    await this.#session.send("HeapProfiler.collectGarbage");
    await this.#workers.askAll("HeapProfiler.collectGarbage");
    const { usedSize } = await this.#session.send("Runtime.getHeapUsage");
    const workers = await this.#workers.askAll<{ usedSize: number }>("Runtime.getHeapUsage");
    const { nodes } = await this.#session.send("Memory.getDOMCounters");
    const workerHeapBytes = workers.reduce((sum, worker) => sum + worker.usedSize, 0);
    return { heapBytes: usedSize, workerHeapBytes, nodes };
  }
}

/** Runs in the browser: turns the sliders by turns, to values that hardly repeat a setting. */
async function turnOn(
  sliders: readonly (SVGElement | HTMLElement)[],
  { turns, everyMs, seed }: { turns: number; everyMs: number; seed: number },
): Promise<void> {
  let random = seed;
  const endAt = performance.now() + turns * everyMs;
  for (let turn = 0; performance.now() < endAt; turn++) {
    random = (random * 48_271) % 2_147_483_647;
    const slider = sliders[turn % sliders.length] as HTMLInputElement;
    slider.value = String((random % 21) / 2);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => setTimeout(resolve, everyMs));
  }
}

/** Turns all dials for so many minutes. */
export async function turnDials(page: Page, minutes: number, seed: number): Promise<void> {
  const everyMs = 100;
  const turns = Math.round((minutes * 60_000) / everyMs);
  await page.locator(".controls").getByRole("slider").evaluateAll(turnOn, { turns, everyMs, seed });
}
