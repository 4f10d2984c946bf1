import type { Page } from "playwright-core";
import { WorkerSessions } from "./worker-sessions.ts";

/**
 * Runs in a worker, before its own script: what answers a message goes out only after so many times the time that was spent
 * on it. Work that goes on beyond the task of its message goes out unslowed.
 */
function answerSlowly(rate: number): void {
  const post = globalThis.postMessage as (...args: unknown[]) => void;
  const endOfTask = new MessageChannel();
  let beganAt: number | undefined;
  endOfTask.port1.onmessage = () => {
    beganAt = undefined;
  };
  addEventListener("message", () => {
    beganAt = performance.now();
    endOfTask.port2.postMessage(undefined);
  });
  Object.assign(globalThis, {
    postMessage(...args: unknown[]) {
      if (beganAt !== undefined) {
        const dueAt = beganAt + rate * (performance.now() - beganAt);
        while (performance.now() < dueAt);
        beganAt = performance.now();
      }
      post.apply(globalThis, args);
    },
  });
}

/**
 * Lets a page compute so many times slower. Chromium slows the main thread alone ("only supported for pages, not workers"), so
 * workers are made to answer late; the start of a worker, and the threads for sound and compositing, keep their speed.
 */
export async function slowDown(page: Page, rate: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
  await WorkerSessions.follow(page, `(${answerSlowly})(${rate})`);
}
