import type { Build, BuildInput } from "../build-file/schema.ts";
import type { RawSettings } from "../build-file/settings.ts";
import type { SignalEntry } from "../render/signals.ts";

/** A guard that one may start from, in the long form. */
export interface StartGuard {
  readonly id: string;
  readonly title: string;
  readonly build: BuildInput;
}

/** An example: a guard with the decision that it is about. */
export interface StartScenario extends StartGuard {
  readonly description: string;
  readonly question: string;
  readonly compareWith?: BuildInput;
  readonly settings?: RawSettings;
}

/** What the page offers without asking the service, written once when it is bundled. */
export interface PageData {
  readonly scenarios: readonly StartScenario[];
  readonly plans: readonly StartGuard[];
  readonly signals: readonly SignalEntry[];
}

/** The example that is open when nobody chose another, read and ready. */
export interface FirstGuard {
  readonly scenario: StartScenario;
  readonly build: Build;
  readonly compareWith: Build | null;
  /** The usual phrase. */
  readonly signal: string;
}
