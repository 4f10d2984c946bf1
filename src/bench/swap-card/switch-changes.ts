import { capitalised, listed } from "../../english.ts";
import type { GuardSound } from "./sounds.ts";

/** What the lesser switches of a guard do: "lower tone up" and what it makes of each position. */
function switchesOf(sounds: readonly GuardSound[]): Map<string, Map<number, string>> {
  const found = new Map<string, Map<number, string>>();
  for (const { isMain, position, number, label } of sounds) {
    if (isMain) continue;
    const moved = position.replace(/^\d+, /, "");
    const own = found.get(moved) ?? new Map<number, string>();
    own.set(number, label);
    found.set(moved, own);
  }
  return found;
}

function doesWords(does: ReadonlyMap<number, string>): string {
  return listed(Array.from(does, ([number, label]) => `position ${number} is then ${label}`));
}

function goneWords(moved: string, does: ReadonlyMap<number, string>, isThere: boolean): string {
  const made = `it made ${listed(Array.from(does, ([number, label]) => `position ${number} ${label}`))}`;
  return isThere
    ? `${capitalised(moved)} does nothing any more: ${made}.`
    : `Gone: ${moved}. The new guard has no such switch; ${made}.`;
}

/**
 * Push-pulls and small switches that are gone, new, or do something else.
 * @param there every way to move one of the new guard's, "lower tone up"
 */
export function switchChanges(
  out: readonly GuardSound[],
  into: readonly GuardSound[],
  there: ReadonlySet<string>,
): string[] {
  const [old, now] = [switchesOf(out), switchesOf(into)];
  const gone = [...old.keys()].filter((moved) => !now.has(moved));
  const told = Array.from(now, ([moved, does]) => {
    const before = old.get(moved);
    if (!before) return `New: ${moved}. ${capitalised(doesWords(does))}.`;
    const same = before.size === does.size && [...does].every(([number, label]) => before.get(number) === label);
    return same
      ? `${capitalised(moved)} does what it did.`
      : `${capitalised(moved)} does something else now: ${doesWords(does)}.`;
  });
  return [...gone.map((moved) => goneWords(moved, old.get(moved)!, there.has(moved))), ...told];
}

/** Positions in which hum cancels, in words. */
export function humFree(sounds: readonly GuardSound[]): string[] {
  return sounds.filter(({ isHumFree }) => isHumFree).map(({ position, label }) => (position === "" ? label : position));
}
