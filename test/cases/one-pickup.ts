import { readBuild } from "../../src/build-file/read-build.ts";
import { parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { curveFor, featuresFor, Guard } from "../../src/choice/guard.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { SINGLE } from "./bench-guard.ts";

export interface Choices {
  readonly pickup?: object;
  readonly volume?: string;
  readonly tone?: string;
  readonly cap?: string;
  readonly noLoad?: boolean;
  /** Further parts, each between two lugs. */
  readonly across?: readonly { name: string; part: object; lugs: readonly [string, string] }[];
  readonly cable?: object;
}

/** One pickup, tone pot on its hot end, volume pot, 500 pF of cable and 1 MΩ; pots linear, so that dial 5 is electrical 0.5. */
export function guardWith(choices: Choices = {}): Guard {
  const pot = (role: string, resistance: string, more: object = {}) => ({ kind: "pot", role, resistance, ...more });
  const across = choices.across ?? [];
  const base = onePickup({
    pickup: choices.pickup ?? SINGLE,
    parts: {
      volume: pot("volume", choices.volume ?? "250k"),
      tone: pot("tone", choices.tone ?? "250k", { noLoad: choices.noLoad ?? false }),
      cap: { kind: "cap", capacitance: choices.cap ?? "22n" },
      ...Object.fromEntries(across.map(({ name, part }) => [name, part])),
    },
    rest: choices.cable ? { cable: choices.cable } : {},
  }) as { wires: unknown[] };
  const wires = across.flatMap(({ name, lugs: [a, b] }) => [
    [`${name}.a`, a],
    [`${name}.b`, b],
  ]);
  return new Guard(withIdealPots(readBuild({ ...base, wires: [...base.wires, ...wires] })));
}

/** dB at the given frequencies. */
export function levels(guard: Guard, settings: RawSettings, frequenciesHz: readonly number[]): number[] {
  const transfers = guard.transfers(parseSettings(guard.controls, settings));
  return [...curveFor(transfers, Float64Array.from(frequenciesHz))];
}

export function level(guard: Guard, settings: RawSettings, frequencyHz: number): number {
  return levels(guard, settings, [frequencyHz])[0]!;
}

/** The peak's frequency, and its height over the level at 80 Hz. */
export function peakOver80Hz(guard: Guard, settings: RawSettings = {}): { frequency: number; level: number } | null {
  const transfers = guard.transfers(parseSettings(guard.controls, settings));
  const { peak } = featuresFor(transfers);
  if (!peak) return null;
  const [top, low] = curveFor(transfers, Float64Array.of(peak.frequency, 80));
  return { frequency: peak.frequency, level: top! - low! };
}

/** Where the curve is highest between 40 Hz and 10 kHz. */
export function humpHz(guard: Guard, settings: RawSettings): number {
  const frequencies = Array.from(logSpaced(40, 10_000, 2000));
  const heights = levels(guard, settings, frequencies);
  return frequencies[heights.indexOf(Math.max(...heights))]!;
}
