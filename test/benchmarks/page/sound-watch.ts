import type { Page } from "playwright-core";
import { positionChoice } from "../../page/actions.ts";

/** −80 dB of full scale: nobody hears less as the beginning of a note. */
const AUDIBLE = 1e-4;

declare global {
  var soundWatch: {
    /** Counts from the next click. */
    arm(): void;
    /** ms from the click to the first audible sample at the audio output. */
    heardAfterMs(): Promise<number>;
    /** When the sound that was started last begins, on the clock of `performance.now()`; and how many were started. */
    lastStart(): { readonly atMs: number; readonly count: number };
  };
}

/**
 * Runs in the browser, before anything of the page. Whatever goes to a context's output goes to an analyser too, which holds
 * the last 0.7 s of it; so the first audible sample is found exactly even if it is looked for late.
 */
function watchSound(audible: number): void {
  const POLL_MS = 50;
  const PATIENCE_MS = 30_000;
  const taps = new Map<AudioContext, AnalyserNode>();
  const { connect, disconnect } = AudioNode.prototype as unknown as Record<string, (...args: unknown[]) => unknown>;

  function tapFor({ context }: AudioNode, target: unknown): AnalyserNode | undefined {
    if (!(context instanceof AudioContext) || target !== context.destination) return undefined;
    const tap = taps.get(context) ?? new AnalyserNode(context, { fftSize: 32_768 });
    taps.set(context, tap);
    return tap;
  }

  Object.assign(AudioNode.prototype, {
    connect(this: AudioNode, target: unknown, ...rest: unknown[]) {
      const tap = tapFor(this, target);
      if (tap) connect!.call(this, tap, ...rest);
      return connect!.call(this, target, ...rest);
    },
    disconnect(this: AudioNode, ...args: unknown[]) {
      const tap = tapFor(this, args[0]);
      if (tap) disconnect!.call(this, tap, ...args.slice(1));
      return disconnect!.call(this, ...args);
    },
  });

  /** On the clock of `performance.now()`. */
  function firstAudibleAt(context: AudioContext, tap: AnalyserNode): number | undefined {
    const samples = new Float32Array(tap.fftSize);
    const endSeconds = context.currentTime;
    tap.getFloatTimeDomainData(samples);
    const first = samples.findIndex((sample) => Math.abs(sample) > audible);
    if (first < 0) return undefined;
    const seconds = endSeconds - (samples.length - first) / context.sampleRate;
    const { contextTime, performanceTime } = context.getOutputTimestamp();
    return performanceTime! + (seconds - contextTime!) * 1000;
  }

  const pause = () => new Promise((resolve) => setTimeout(resolve, POLL_MS));

  async function heardSince(clickedAt: number): Promise<number> {
    while (performance.now() - clickedAt < PATIENCE_MS) {
      for (const [context, tap] of taps) {
        const at = firstAudibleAt(context, tap);
        if (at !== undefined) return at - clickedAt;
      }
      await pause();
    }
    throw new Error("nothing was heard");
  }

  let last = { atMs: Number.NaN, count: 0 };
  const { start } = AudioBufferSourceNode.prototype;
  AudioBufferSourceNode.prototype.start = function (when = 0, ...rest) {
    const inSeconds = Math.max(0, when - this.context.currentTime);
    if (this.buffer) last = { atMs: performance.now() + inSeconds * 1000, count: last.count + 1 };
    return start.call(this, when, ...rest);
  };

  let clickedAt: Promise<number>;
  globalThis.soundWatch = {
    arm() {
      clickedAt = new Promise((resolve) => {
        addEventListener("click", ({ timeStamp }) => resolve(timeStamp), { capture: true, once: true });
      });
    },
    heardAfterMs: async () => heardSince(await clickedAt),
    lastStart: () => last,
  };
}

export async function prepareSoundWatch(page: Page): Promise<void> {
  await page.addInitScript(watchSound, AUDIBLE);
}

export interface SoundTimes {
  /** From the click on play to the first audible sample. */
  readonly playMs: number;
  /** From another position of the lever to where its sound begins to take over. */
  readonly changeMs: readonly number[];
}

/** Runs in the browser. */
async function timeChange(position: SVGElement | HTMLElement): Promise<number> {
  const before = soundWatch.lastStart().count;
  const clickedAt = performance.now();
  (position as HTMLElement).click();
  while (soundWatch.lastStart().count === before) {
    if (performance.now() - clickedAt > 5000) throw new Error("no other sound took over");
    await new Promise((resolve) => setTimeout(resolve));
  }
  return soundWatch.lastStart().atMs - clickedAt;
}

/** A listener's pause before the next position. */
const LISTEN_MS = 1500;

/** Presses play, turns the lever while it sounds, and presses stop. */
export async function timeSound(page: Page): Promise<SoundTimes> {
  await page.evaluate(() => soundWatch.arm());
  await page.getByRole("button", { name: /^Play( this setting)?$/ }).click();
  const heardMs = await page.evaluate(() => soundWatch.heardAfterMs());
  const changeMs: number[] = [];
  for (const position of [2, 4, 3, 1]) {
    await page.waitForTimeout(LISTEN_MS);
    changeMs.push(await positionChoice(page, position).evaluate(timeChange));
  }
  await page.getByRole("button", { name: "Stop", exact: true }).click();
  return { playMs: heardMs, changeMs };
}
