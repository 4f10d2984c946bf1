import type { Page } from "playwright-core";

/** −80 dB of full scale: nobody hears less as the beginning of a note. */
const AUDIBLE = 1e-4;

declare global {
  var soundWatch: {
    /** Counts from the next click. */
    arm(): void;
    /** ms from the click to the first audible sample at the audio output. */
    heardAfterMs(): Promise<number>;
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

  let clickedAt: Promise<number>;
  globalThis.soundWatch = {
    arm() {
      clickedAt = new Promise((resolve) => {
        addEventListener("click", ({ timeStamp }) => resolve(timeStamp), { capture: true, once: true });
      });
    },
    heardAfterMs: async () => heardSince(await clickedAt),
  };
}

export async function prepareSoundWatch(page: Page): Promise<void> {
  await page.addInitScript(watchSound, AUDIBLE);
}

/** Presses play, and stop once it sounds: ms from the click to the first audible sample. */
export async function timePlay(page: Page): Promise<number> {
  await page.evaluate(() => soundWatch.arm());
  await page.getByRole("button", { name: /^Play( this setting)?$/ }).click();
  const heardMs = await page.evaluate(() => soundWatch.heardAfterMs());
  await page.getByRole("button", { name: "Stop", exact: true }).click();
  return heardMs;
}
