import { TEST_SIGNALS, type TestSignalName } from "../audio/signals.ts";
import { DEFAULT_PHRASE_NAME, PHRASES } from "../strings/phrases.ts";

/** A built-in signal as a caller may choose it. */
export interface SignalEntry {
  readonly name: string;
  /** A phrase is played on the build's strings and heard by every coil; a test signal drives every coil alike. */
  readonly kind: "phrase" | "test";
  readonly description: string;
}

const TEST_DESCRIPTIONS: Readonly<Record<TestSignalName, string>> = {
  sweep: "A sine rising from 10 Hz to the top of the band in 10 s",
  noise: "White noise, 5 s",
  click: "A single sample, 10 ms after the start",
};

export const SIGNALS: readonly SignalEntry[] = [
  ...PHRASES.map(({ name, description }) => ({ name, kind: "phrase" as const, description })),
  ...TEST_SIGNALS.map((name) => ({ name, kind: "test" as const, description: TEST_DESCRIPTIONS[name] })),
];

export const SIGNAL_NAMES = SIGNALS.map(({ name }) => name) as [string, ...string[]];
export const DEFAULT_SIGNAL = DEFAULT_PHRASE_NAME;
export const DEFAULT_SAMPLE_RATE_HZ = 48_000;

export function isTestSignal(name: string): name is TestSignalName {
  return (TEST_SIGNALS as readonly string[]).includes(name);
}
