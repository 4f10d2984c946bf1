import { MOST_POSITIONS } from "../space/positions.ts";
import type { Where } from "../wish.ts";

const PICKUPS: Readonly<Record<string, string>> = {
  bridge: "bridge",
  middle: "middle",
  mid: "middle",
  neck: "neck",
};
const EVERYWHERE = new Set(["everywhere", "all", "every", "throughout", "always", "anyway"]);
const ANYWHERE = new Set(["anywhere", "somewhere", "some"]);

export const PLACE_WORDS: readonly string[] = [...Object.keys(PICKUPS), "position", "everywhere", "anywhere"];

/** What positions there are, for whoever named another one. */
export const POSITIONS_THERE = `expected a position from 1 to ${MOST_POSITIONS}, 1 nearest the bridge`;

/** The number of a position that is named so, whether there is one or not. */
function numberIn(token: string): number | undefined {
  const number = /^(?:p|pos|position)?(-?\d+(?:\.\d+)?)$/.exec(token)?.[1];
  return number === undefined ? undefined : Number(number);
}

const isPosition = (number: number) => Number.isInteger(number) && number >= 1 && number <= MOST_POSITIONS;

/** Whether a token names a position that no guard has. */
export function isNoPosition(token: string): boolean {
  const number = numberIn(token);
  return number !== undefined && !isPosition(number);
}

export function placeOf(token: string): Where | undefined {
  const position = numberIn(token);
  if (position !== undefined) return isPosition(position) ? { kind: "position", position } : undefined;
  const pickups = token.split("+").map((name) => (Object.hasOwn(PICKUPS, name) ? PICKUPS[name]! : undefined));
  if (pickups.every((name) => name !== undefined)) return { kind: "pickups", pickups: [...new Set(pickups)] };
  if (EVERYWHERE.has(token)) return { kind: "everywhere" };
  return ANYWHERE.has(token) ? { kind: "anywhere" } : undefined;
}
