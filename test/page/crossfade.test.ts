import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { usePage } from "./browser.ts";
import { bringModules } from "./in-browser.ts";

const RATE_HZ = 48_000;
const TONE_HZ = 440;
const SWITCH_AT_SECONDS = 0.5;

/**
 * Runs in the browser: plays a tone, lets a louder one of the same phase take over half-way, and returns what came out.
 * @param kind by the deck for rendered sounds, or through the filters of the live deck
 */
async function takeOver(kind: "deck" | "live", rate: number, tone: number, at: number): Promise<number[]> {
  const { Deck, LiveDeck } = (globalThis as never as { modules: Record<string, new (...args: unknown[]) => never> })
    .modules;
  const context = new OfflineAudioContext(1, rate, rate);
  const bufferOf = (length: number, of: (n: number) => number) => {
    const buffer = context.createBuffer(1, length, rate);
    buffer.getChannelData(0).set(Float32Array.from({ length }, (_, n) => of(n)));
    return buffer;
  };
  const sine = (gain: number) => bufferOf(rate, (n) => gain * Math.sin((2 * Math.PI * tone * n) / rate));
  const pulse = (gain: number) => bufferOf(256, (n) => (n === 0 ? gain : 0));
  type Player = { play(sound: AudioBuffer): void };
  type Live = {
    setImpulse(sound: AudioBuffer): void;
    startRecording(sound: AudioBuffer, loop: boolean, end: () => void): void;
  };
  if (kind === "deck") {
    const deck = new Deck!(context, context.destination, () => undefined) as unknown as Player;
    deck.play(sine(0.2));
    void context.suspend(at).then(() => {
      deck.play(sine(0.5));
      return context.resume();
    });
  } else {
    const live = new LiveDeck!(context, context.destination) as unknown as Live;
    live.setImpulse(pulse(0.2));
    live.startRecording(sine(1), true, () => undefined);
    void context.suspend(at).then(() => {
      live.setImpulse(pulse(0.5));
      return context.resume();
    });
  }
  return Array.from((await context.startRendering()).getChannelData(0));
}

function largestStep(samples: readonly number[]): number {
  return samples.slice(1).reduce((largest, sample, n) => Math.max(largest, Math.abs(sample - samples[n]!)), 0);
}

describeWith("chromium", "taking over during playback", () => {
  const site = usePage();

  async function played(kind: "deck" | "live"): Promise<number[]> {
    const { page } = await site.visit();
    await bringModules(
      page,
      'export { Deck } from "./listen/deck.ts"; export { LiveDeck } from "./listen/live-deck.ts";',
    );
    const call = `(${takeOver})(${JSON.stringify(kind)}, ${RATE_HZ}, ${TONE_HZ}, ${SWITCH_AT_SECONDS})`;
    return (await page.evaluate(call)) as number[];
  }

  /** The louder tone's own steepest step, and what the gain adds while it rises by 0.3 in 30 ms. */
  const steepest = (2 * Math.PI * TONE_HZ * 0.5) / RATE_HZ + 0.3 / (0.03 * RATE_HZ);

  it("keeps the place and does not click between two rendered sounds", async () => {
    const samples = await played("deck");
    const start = samples.findIndex((sample) => sample !== 0) - 1;
    expect(largestStep(samples)).toBeLessThan(steepest);
    for (let n = Math.round(0.6 * RATE_HZ); n < 0.9 * RATE_HZ; n++) {
      // The tone goes on as if there had been one sound all the time; the tolerance is float32 and a start between samples.
      const wanted = 0.5 * Math.sin((2 * Math.PI * TONE_HZ * (n - start)) / RATE_HZ);
      expect(Math.abs(samples[n]! - wanted)).toBeLessThan(0.03);
    }
    expect(Math.max(...samples.slice(0, SWITCH_AT_SECONDS * RATE_HZ))).toBeCloseTo(0.2, 2);
  });

  it("does not click when a filter takes over in the live deck", async () => {
    const samples = await played("live");
    expect(largestStep(samples)).toBeLessThan(steepest);
    expect(Math.max(...samples.slice(0, 0.5 * RATE_HZ))).toBeCloseTo(0.2, 2);
    expect(Math.max(...samples.slice(0.6 * RATE_HZ, 0.9 * RATE_HZ))).toBeCloseTo(0.5, 2);
  });
});
