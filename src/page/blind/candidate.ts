import { summarize } from "../../build/setting-label.ts";
import { parseSettings, type RawSettings } from "../../build/settings.ts";
import type { AppState } from "../state/app-state.ts";
import { fitSettings } from "../state/editor.ts";
import type { Reading } from "../state/reading.ts";

/** One side of a blind test. */
export interface Candidate {
  readonly reading: Reading;
  readonly settings: RawSettings;
}

export function candidateText({ reading, settings }: Candidate): string {
  const { label } = summarize(reading.controls, parseSettings(reading.controls, settings));
  return `${reading.source.title || "this guard"}: ${label}`;
}

export function fromBench({ reading, settings }: AppState): Candidate | undefined {
  return reading ? { reading, settings } : undefined;
}

/** The other build where there is one; else the same guard with its tone turned down. */
export function usualSecond(state: AppState): Candidate | undefined {
  const { reading, other, settings } = state;
  if (other) return { reading: other, settings: fitSettings(other, settings) };
  return reading ? { reading, settings: fitSettings(reading, { ...settings, tone: 5 }) } : undefined;
}
