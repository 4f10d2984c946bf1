import { readdirSync } from "node:fs";
import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { speakerFilter } from "../../src/listening/speaker/filter.ts";
import { filtersIn } from "../../src/render/filters.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { settingsOf, WORK } from "../render/scenario-settings.ts";
import { describeWith } from "../tools.ts";
import { usePage } from "./browser.ts";
import { bringModules } from "./in-browser.ts";

const RATE_HZ = 48_000;
const SECONDS = 2;
const build = readBuild(threeSingles());
/** Two notes at once that last, 0.3 V at the most. */
const tone = Float32Array.from(
  { length: SECONDS * RATE_HZ },
  (_, n) => 0.2 * Math.sin((2 * Math.PI * 147 * n) / RATE_HZ) + 0.1 * Math.sin((2 * Math.PI * 220 * n) / RATE_HZ + 1),
);
const settings = [{ lever: 1 }, { lever: 2 }, { lever: 1, tone: 0 }, { lever: 5, volume: 6 }].map((each) =>
  settingsOf(build, each),
);

/** What a change is to, and when. */
interface Change {
  readonly at: number;
  readonly to: number;
}

/** Runs in the browser: one sound after the other takes over by the deck for rendered sounds. */
async function byDeck(sounds: number[][], changes: Change[], rate: number, seconds: number): Promise<number[]> {
  const { Deck } = (globalThis as never as { modules: Record<string, new (...args: unknown[]) => never> }).modules;
  const context = new OfflineAudioContext(1, rate * seconds, rate);
  const buffers = sounds.map((samples) => {
    const buffer = context.createBuffer(1, samples.length, rate);
    buffer.getChannelData(0).set(samples);
    return buffer;
  });
  const deck = new Deck!(context, context.destination, () => undefined) as unknown as { play(s: AudioBuffer): void };
  deck.play(buffers[0]!);
  for (const { at, to } of changes)
    void context.suspend(at).then(() => {
      deck.play(buffers[to]!);
      return context.resume();
    });
  return Array.from((await context.startRendering()).getChannelData(0));
}

interface Live {
  readonly sound: number[];
  readonly impulses: number[][];
  readonly speaker: number[];
  /** Of each way behind the jack; undefined for nothing. */
  readonly drives: (number | null)[];
  readonly filterChanges: Change[];
  readonly wayChanges: Change[];
}

/** Runs in the browser: one sound through the live deck, while other filters and other things behind the jack take over. */
async function byLiveDeck(live: Live, rate: number, seconds: number): Promise<number[]> {
  const { LiveDeck, chainWay, STRAIGHT } = (globalThis as never as { modules: Record<string, never> })
    .modules as never as {
    LiveDeck: new (...args: unknown[]) => never;
    chainWay: (context: BaseAudioContext, choice: { drive: number }, speaker: AudioBuffer) => Promise<object>;
    STRAIGHT: object;
  };
  const context = new OfflineAudioContext(1, rate * seconds, rate);
  const bufferOf = (samples: number[]) => {
    const buffer = context.createBuffer(1, samples.length, rate);
    buffer.getChannelData(0).set(samples);
    return buffer;
  };
  const wayOf = (drive: number | null) =>
    drive === null ? STRAIGHT : chainWay(context, { drive }, bufferOf(live.speaker));
  const deck = new LiveDeck(context, context.destination) as never as {
    setImpulse(impulse: AudioBuffer): void;
    setHeardThrough(way: object): void;
    startRecording(sound: AudioBuffer, loop: boolean, end: () => void): void;
  };
  deck.setImpulse(bufferOf(live.impulses[0]!));
  deck.setHeardThrough(await wayOf(live.drives[0]!));
  deck.startRecording(bufferOf(live.sound), false, () => undefined);
  for (const { at, to } of live.filterChanges)
    void context.suspend(at).then(() => {
      deck.setImpulse(bufferOf(live.impulses[to]!));
      return context.resume();
    });
  for (const { at, to } of live.wayChanges)
    void context.suspend(at).then(async () => {
      deck.setHeardThrough(await wayOf(live.drives[to]!));
      return context.resume();
    });
  return Array.from((await context.startRendering()).getChannelData(0));
}

/**
 * How far each sample is from the cubic through its four neighbours: next to nothing of a sound whose treble is under 5 kHz, and half
 * the step of a click.
 */
function roughness(samples: readonly number[]): number[] {
  return samples.map((sample, n) => {
    const [a, b, c, d] = [samples[n - 2], samples[n - 1], samples[n + 1], samples[n + 2]];
    if (a === undefined || b === undefined || c === undefined || d === undefined) return 0;
    return Math.abs(sample - (4 * (b + c) - a - d) / 6);
  });
}

/** The roughest sample from the first change on over what is as rough all the time, in dB of the loudest sample. */
function clicksDb(samples: readonly number[], changes: readonly Change[]): number {
  const peak = Math.max(...samples.map(Math.abs));
  const rough = roughness(samples);
  const near = (n: number) => changes.some(({ at }) => Math.abs(n / RATE_HZ - at - 0.04) < 0.06);
  const settled = (n: number) => n > 0.1 * RATE_HZ && n < (SECONDS - 0.1) * RATE_HZ;
  const steady = rough.reduce((most, value, n) => (settled(n) && !near(n) ? Math.max(most, value) : most), 0);
  const changing = rough.reduce((most, value, n) => (settled(n) && near(n) ? Math.max(most, value) : most), 0);
  return 20 * Math.log10(Math.max(1e-9, changing - steady) / peak);
}

const changesTo = (to: readonly number[], everySeconds = 0.25): Change[] =>
  to.map((each, index) => ({ at: everySeconds * (index + 1), to: each }));

describeWith("chromium", "taking over while an amplifier is heard", () => {
  const site = usePage();

  async function inBrowser(call: string): Promise<number[]> {
    const { page } = await site.visit({ path: "/healthz" });
    const [version] = readdirSync("public/built");
    await bringModules(
      page,
      `export { Deck } from "./listen/deck.ts"; export { LiveDeck } from "./listen/live-deck.ts";
       export { STRAIGHT } from "./listen/crossing.ts"; export { chainWay } from "./listen/chain/chain-way.ts";`,
      `${site.origin}/built/${version}/main.js`,
    );
    return (await page.evaluate(call)) as number[];
  }

  const renderings = (drive: number | undefined) => {
    const file = encodeWav({ sampleRateHz: RATE_HZ, channels: [tone] }, "float32");
    const listening = drive === undefined ? undefined : { drive };
    const renderer = createRenderer({ build, signal: { file }, listening }, settings, WORK);
    return settings.map((each) => [...renderer.render(each).channels[0]!.subarray(0, tone.length)]);
  };

  it("clicks less than -60 dB between cells and positions, and with the chain put in and taken away", async () => {
    const sounds = [...renderings(undefined), ...renderings(0), ...renderings(7)];
    const changes = changesTo([1, 5, 6, 2, 9, 11, 3]);
    const samples = await inBrowser(
      `(${byDeck})(${JSON.stringify(sounds)}, ${JSON.stringify(changes)}, ${RATE_HZ}, ${SECONDS})`,
    );
    expect(clicksDb(samples, changes)).toBeLessThan(-60);
  });

  it("would be heard to click where one cell were put in another's place at once", () => {
    const [one, other] = renderings(undefined) as [number[], number[]];
    const cut = [...one.slice(0, RATE_HZ), ...other.slice(RATE_HZ)];
    expect(clicksDb(cut, [{ at: 1, to: 1 }])).toBeGreaterThan(-40);
  });

  const engine = new ResponseEngine(build);
  const impulses = settings.map((each) => {
    const { taps } = filtersIn({ engine, sampleRateHz: RATE_HZ, hasDrive: true, hasCoils: false }, each);
    return [...taps[0]!];
  });
  const speaker = [...speakerFilter(RATE_HZ).taps];
  const live = (rest: Partial<Live>) =>
    inBrowser(
      `(${byLiveDeck})(${JSON.stringify({ sound: [...tone], impulses, speaker, drives: [0], filterChanges: [], wayChanges: [], ...rest })}, ${RATE_HZ}, ${SECONDS})`,
    );

  it("clicks less than -60 dB as knobs and chain of a live sound are turned", async () => {
    const filterChanges = changesTo([1, 2, 3, 0], 0.4);
    const wayChanges = changesTo([1, 2, 3, 0, 2], 0.33);
    const samples = await live({ drives: [null, 0, 7, 3], filterChanges, wayChanges });
    expect(clicksDb(samples, [...filterChanges, ...wayChanges])).toBeLessThan(-60);
  });

  it.each([0, 7])("is live what is rendered, driven by %d", async (drive) => {
    const samples = await live({ drives: [drive] });
    const [wanted] = renderings(drive) as [number[]];
    const power = (values: readonly number[]) => values.reduce((sum, value) => sum + value ** 2, 0);
    const error = power(samples.map((sample, n) => sample - wanted[n]!)) / power(wanted);
    expect(10 * Math.log10(error)).toBeLessThan(-80);
  });
});
