import type { CoilPlace } from "../strings/comb.ts";
import { DEFAULT_HAND, type HandName } from "../strings/hands.ts";
import { phraseNamed } from "../strings/phrases.ts";
import { playedBy } from "../strings/score.ts";
import type { StringSet } from "../strings/string-set.ts";
import { renderPhrase } from "../strings/synth.ts";

/** A dozen phrases of a three-coil guard at 48 kHz. */
const MAX_BYTES = 64 * 2 ** 20;

interface Entry {
  readonly signals: readonly Float32Array[];
  readonly bytes: number;
}

const entries = new Map<string, Entry>();

function keep(key: string, entry: Entry): void {
  entries.set(key, entry);
  let bytes = 0;
  for (const { bytes: more } of entries.values()) bytes += more;
  for (const [oldest, { bytes: less }] of entries) {
    if (bytes <= MAX_BYTES) break;
    entries.delete(oldest);
    bytes -= less;
  }
}

/**
 * A phrase as each coil hears it, in volts with the coil's sign and output. Rendered once for a set of coils and kept while there
 * is room, since the answer depends on nothing but the arguments; it must not be written to.
 * @throws PresolderError NOT_FOUND for an unknown phrase, REQUEST_INVALID for a rate out of range
 */
export function phraseSignals(
  name: string,
  coils: readonly CoilPlace[],
  strings: StringSet,
  sampleRateHz: number,
  hand: HandName = DEFAULT_HAND,
  checkpoint?: () => void,
): readonly Float32Array[] {
  const key = JSON.stringify([name, hand, coils, strings, sampleRateHz]);
  const kept = entries.get(key);
  if (kept) {
    entries.delete(key);
    entries.set(key, kept);
    return kept.signals;
  }
  const signals = renderPhrase(playedBy(phraseNamed(name), hand), coils, strings, sampleRateHz, checkpoint);
  keep(key, { signals, bytes: signals.reduce((sum, signal) => sum + signal.byteLength, 0) });
  return signals;
}
