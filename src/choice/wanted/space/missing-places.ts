import { listed } from "../../../english.ts";
import { type Wish, whereWords } from "../wish.ts";
import { positionsOf } from "./positions.ts";
import type { Shape } from "./shapes.ts";

const pickupsOf = (starts: readonly Shape[]) => [...new Set(starts.flatMap(({ plan }) => Object.keys(plan.pickups)))];

/** Why none of some guards has all places that are wished for. */
export function missingPlaces(starts: readonly Shape[], wishes: readonly Wish[]): string {
  const most = Math.max(...starts.map(({ plan }) => positionsOf(plan)));
  const pickups = pickupsOf(starts);
  const there = `they have positions 1 to ${most} and the pickups ${listed(pickups)}`;
  const lacking = wishes.filter(({ where }) => {
    if (where.kind === "position") return where.position > most;
    return where.kind === "pickups" && where.pickups.some((name) => !pickups.includes(name));
  });
  if (lacking.length === 0)
    return `none of them has all the positions and pickups that are wished for; ${there}, each some of these`;
  return `none of them has ${listed(lacking.map(({ where }) => whereWords(where)))}; ${there}`;
}
