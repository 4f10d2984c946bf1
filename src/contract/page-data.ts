import type { Build, BuildInput } from "../build-file/schema.ts";
import type { RawSettings } from "../build-file/settings.ts";
import type { RawSweep } from "../build-file/sweep.ts";
import type { HandName, StringAge, WayEntry } from "../render/playing.ts";
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
  /** The settings worth comparing. */
  readonly sweep?: RawSweep;
}

/** Every guard that one may start from. */
export interface StartGuards {
  readonly scenarios: readonly StartScenario[];
  readonly plans: readonly StartGuard[];
}

type Named = Pick<StartGuard, "id" | "title">;

/** What the page offers without asking the service: guards by name, and signals. */
export interface PageOffer {
  readonly scenarios: readonly Named[];
  readonly plans: readonly Named[];
  readonly signals: readonly SignalEntry[];
  readonly hands: readonly WayEntry<HandName>[];
  readonly strings: readonly WayEntry<StringAge>[];
}

/** What is written once, when the page is bundled. */
export interface PageData {
  readonly guards: StartGuards;
  readonly offer: PageOffer;
  readonly first: FirstGuard;
}

/** The example that is open when nobody chose another, read and ready. */
export interface FirstGuard {
  readonly scenario: StartScenario;
  readonly build: Build;
  readonly compareWith: Build | null;
  /** The usual phrase. */
  readonly signal: string;
}
