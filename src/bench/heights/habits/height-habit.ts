import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import type { Build, Pickup } from "../../../build-file/schema.ts";
import { partWords } from "../../../build-file/words/part-words.ts";
import { millimetresText } from "../../../lengths.ts";
import type { MountedPickup } from "../screws.ts";

/** What makes a pickup another one to a string: its coils and type, not what is soldered to it. */
function makeOf({ type, coils }: Pickup): string {
  return JSON.stringify([type, coils]);
}

/** Words for every pickup place whose height is to be set anew, told from what is given alone. */
export function heightHabit(from: Build, to: Build, measured: readonly MountedPickup[]): string[] {
  const old = new Map(partsOfKind(from, "pickup"));
  const [oldWords, words] = [partWords(from.parts), partWords(to.parts)];
  const gapOf = (name: string) => {
    const gaps = measured.find((pickup) => pickup.name === name)?.gaps;
    if (!gaps) return "Its gap has not been measured yet.";
    return `It stands at ${millimetresText(gaps.bassMetres)} on the bass side and ${millimetresText(gaps.trebleMetres)} on the treble side.`;
  };
  const changed = partsOfKind(to, "pickup").flatMap(([name, pickup]) => {
    const before = old.get(name);
    if (!before) return [`The ${words.get(name)} is new there: its height has to be found. ${gapOf(name)}`];
    if (makeOf(before) === makeOf(pickup)) return [];
    return [
      `The ${words.get(name)} sits where the ${oldWords.get(name)} sat: that one's height says nothing about it. ${gapOf(name)}`,
    ];
  });
  const kept = partsOfKind(to, "pickup").length > 0 && changed.length === 0;
  return kept
    ? ["Every pickup is the one that was there: leave the heights as they are, and listen before a screw is turned."]
    : [...changed, "Pickups that stay keep their heights, until the levels say otherwise."];
}
