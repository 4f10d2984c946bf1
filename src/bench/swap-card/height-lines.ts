import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { capitalised } from "../../english.ts";
import { faultAt } from "../../errors.ts";
import { millimetresText } from "../../lengths.ts";
import { expectedOf } from "../passport/expected-of.ts";
import type { PickupHeight } from "../passport/passport.ts";

interface Kept {
  readonly heights: Readonly<Record<string, PickupHeight>>;
  readonly heightsOut: Readonly<Record<string, PickupHeight>>;
}

/** Common practice, no source. */
const STRONG_MAGNETS =
  "A single coil's rods pull the strings: closer than about 2 mm under the lowest string, pressed at the last fret, notes beat and intonation wanders.";

function gapText({ bass, treble }: PickupHeight): string {
  return `${millimetresText(bass)} on the bass side and ${millimetresText(treble)} on the treble side`;
}

const kept = (heights: Kept["heights"], name: string) => (Object.hasOwn(heights, name) ? heights[name] : undefined);

/**
 * What to set every pickup's height to: what was kept of this guard, else where to begin.
 * @throws PresolderError REQUEST_INVALID naming a pickup that the old guard does not have
 */
export function heightLines(out: Build, into: Build, { heights, heightsOut }: Kept): string[] {
  const there = partsOfKind(out, "pickup").map(([name]) => name);
  const stray = Object.keys(heightsOut).find((name) => !there.includes(name));
  if (stray !== undefined)
    throw faultAt(
      "REQUEST_INVALID",
      `heightsOut.${stray}`,
      `"${stray}" is no pickup of the guard that comes out${expectedOf(there)}`,
    );
  const words = partWords(into.parts);
  const lines = partsOfKind(into, "pickup").map(([name]) => {
    const start = `${capitalised(words.get(name) ?? name)}:`;
    const [own, old] = [kept(heights, name), kept(heightsOut, name)];
    if (own) return `${start} back to ${gapText(own)}, as it was when this guard was last in.`;
    if (old)
      return `${start} none kept of this guard. The old guard's pickup there stood at ${gapText(old)}: begin there, and listen.`;
    return `${start} none kept. Measure where it comes to stand, and find its height by ear, position against position.`;
  });
  const hasRods = partsOfKind(into, "pickup").some(([, { coils }]) => Object.keys(coils).length === 1);
  return [...lines, ...(hasRods ? [STRONG_MAGNETS] : [])];
}
