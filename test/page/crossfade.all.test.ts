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

/**
 * Runs in the browser: plays a constant sound of 1, lets two more of the same take over, the second while the first still fades
 * in, stops, and returns what came out: the sum of all gains.
 */
async function gainsOf(kind: "deck" | "live", rate: number): Promise<number[]> {
  const { Deck, LiveDeck } = (globalThis as never as { modules: Record<string, new (...args: unknown[]) => never> })
    .modules;
  const context = new OfflineAudioContext(1, rate, rate);
  const bufferOf = (length: number, of: (n: number) => number) => {
    const buffer = context.createBuffer(1, length, rate);
    buffer.getChannelData(0).set(Float32Array.from({ length }, (_, n) => of(n)));
    return buffer;
  };
  const constant = () => bufferOf(rate, () => 1);
  const pulse = () => bufferOf(256, (n) => (n === 0 ? 1 : 0));
  type Player = { play(sound: AudioBuffer): void; stop(): void };
  type Live = {
    setImpulse(sound: AudioBuffer): void;
    startRecording(sound: AudioBuffer, loop: boolean, end: () => void): void;
    stop(): void;
  };
  const live = new LiveDeck!(context, context.destination) as unknown as Live;
  const deck = new Deck!(context, context.destination, () => undefined) as unknown as Player;
  const takeOver = () => (kind === "deck" ? deck.play(constant()) : live.setImpulse(pulse()));
  takeOver();
  if (kind === "live") live.startRecording(constant(), true, () => undefined);
  const soon: [number, () => void][] = [
    [0.3, takeOver],
    [0.31, takeOver],
    [0.32, takeOver],
    [0.6, () => (kind === "deck" ? deck : live).stop()],
  ];
  for (const [at, act] of soon)
    void context.suspend(at).then(() => {
      act();
      return context.resume();
    });
  return Array.from((await context.startRendering()).getChannelData(0));
}

/** Runs in the browser: what comes out first where the level is set before a recording is started. */
async function loudestAtLevel(level: number, rate: number): Promise<number> {
  const { LiveDeck } = (globalThis as never as { modules: Record<string, new (...args: unknown[]) => never> }).modules;
  const context = new OfflineAudioContext(1, rate / 4, rate);
  const constant = context.createBuffer(1, rate, rate);
  constant.getChannelData(0).fill(1);
  const pulse = context.createBuffer(1, 256, rate);
  pulse.getChannelData(0)[0] = 1;
  const live = new LiveDeck!(context, context.destination) as unknown as {
    setImpulse(sound: AudioBuffer): void;
    setLevel(gain: number): void;
    startRecording(sound: AudioBuffer, loop: boolean, end: () => void): void;
  };
  live.setImpulse(pulse);
  live.setLevel(level);
  live.startRecording(constant, true, () => undefined);
  return Math.max(...(await context.startRendering()).getChannelData(0));
}

/**
 * Runs in the browser: plays a short sound once through a filter that answers late, with time for the page to hear that the
 * sound has ended before the answer is due.
 */
async function lateAnswer(soundSeconds: number, answerSeconds: number, rate: number): Promise<number[]> {
  const { LiveDeck } = (globalThis as never as { modules: Record<string, new (...args: unknown[]) => never> }).modules;
  const context = new OfflineAudioContext(1, rate, rate);
  const sound = context.createBuffer(1, soundSeconds * rate, rate);
  sound.getChannelData(0).fill(0.5);
  const late = context.createBuffer(1, answerSeconds * rate + 1, rate);
  late.getChannelData(0)[answerSeconds * rate] = 1;
  const live = new LiveDeck!(context, context.destination) as unknown as {
    setImpulse(sound: AudioBuffer): void;
    startRecording(sound: AudioBuffer, loop: boolean, end: () => void): void;
  };
  live.setImpulse(late);
  live.startRecording(sound, false, () => undefined);
  void context.suspend(2 * soundSeconds).then(async () => {
    await new Promise((resolve) => setTimeout(resolve, 100));
    await context.resume();
  });
  return Array.from((await context.startRendering()).getChannelData(0));
}

function at(samples: readonly number[], seconds: number): number | undefined {
  return samples[Math.round(seconds * RATE_HZ)];
}

function largestStep(samples: readonly number[]): number {
  return samples.slice(1).reduce((largest, sample, n) => Math.max(largest, Math.abs(sample - samples[n]!)), 0);
}

describeWith("chromium", "taking over during playback", () => {
  const site = usePage();

  async function inBrowser(call: string): Promise<unknown> {
    const { page } = await site.visit({ path: "/healthz" });
    await bringModules(
      page,
      'export { Deck } from "./listen/deck.ts"; export { LiveDeck } from "./listen/live-deck.ts";',
    );
    return page.evaluate(call);
  }

  async function played(kind: "deck" | "live"): Promise<number[]> {
    const call = `(${takeOver})(${JSON.stringify(kind)}, ${RATE_HZ}, ${TONE_HZ}, ${SWITCH_AT_SECONDS})`;
    return (await inBrowser(call)) as number[];
  }

  it.each(["deck", "live"] as const)("goes on from where the gain stands in the midst of a fade (%s)", async (kind) => {
    const samples = (await inBrowser(`(${gainsOf})("${kind}", ${RATE_HZ})`)) as number[];
    // A click of −60 dB; the steepest fade rises by 0.0007 a sample.
    expect(largestStep(samples.slice(Math.round(0.1 * RATE_HZ)))).toBeLessThan(0.001);
    expect(at(samples, 0.29)).toBeCloseTo(1, 5);
    expect(at(samples, 0.55)).toBeCloseTo(1, 5);
    expect(at(samples, 0.7)).toBe(0);
  });

  it("begins at the level that was set, and not at full level on the way to it", async () => {
    expect(await inBrowser(`(${loudestAtLevel})(0.01, ${RATE_HZ})`)).toBeCloseTo(0.01, 6);
  });

  it("lets a recording that has ended ring out before it stops", async () => {
    const samples = (await inBrowser(`(${lateAnswer})(0.125, 0.5, ${RATE_HZ})`)) as number[];
    const heard = samples.flatMap((sample, n) => (sample > 0.4 ? [n / RATE_HZ] : []));
    expect(heard[0]).toBeCloseTo(0.5, 3);
    expect(heard.at(-1)).toBeCloseTo(0.625, 3);
  });

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
