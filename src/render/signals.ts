import { TEST_SIGNAL_SECONDS, TEST_SIGNALS, type TestSignalName } from "../audio/signals.ts";
import { DEFAULT_PHRASE_NAME, PHRASES } from "../strings/phrases.ts";

/** A built-in signal as a caller may choose it. */
export interface SignalEntry {
  readonly name: string;
  readonly title: string;
  /** A phrase is played on the build's strings and heard by every coil; a test signal drives every coil alike. */
  readonly kind: "phrase" | "test";
  readonly description: string;
  readonly seconds: number;
}

const TEST_WORDS: Readonly<Record<TestSignalName, readonly [title: string, description: string]>> = {
  sweep: ["Test sweep", "A sine rising from 10 Hz to the top of the band in 10 s"],
  noise: ["Test noise", "White noise, 5 s"],
  click: ["Test click", "A single sample, 10 ms after the start"],
};

/** "single-line" as "Single line". */
function titleOf(name: string): string {
  const words = name.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The built-in signals, the default one first. */
export const SIGNALS: readonly SignalEntry[] = [
  ...PHRASES.map(({ name, description, seconds }) => ({
    name,
    title: titleOf(name),
    kind: "phrase" as const,
    description,
    seconds,
  })),
  ...TEST_SIGNALS.map((name) => {
    const [title, description] = TEST_WORDS[name];
    return { name, title, kind: "test" as const, description, seconds: TEST_SIGNAL_SECONDS[name] };
  }),
];

export const SIGNAL_NAMES = SIGNALS.map(({ name }) => name) as [string, ...string[]];
export const DEFAULT_SIGNAL = DEFAULT_PHRASE_NAME;
export const DEFAULT_SAMPLE_RATE_HZ = 48_000;

export function isTestSignal(name: string): name is TestSignalName {
  return (TEST_SIGNALS as readonly string[]).includes(name);
}
