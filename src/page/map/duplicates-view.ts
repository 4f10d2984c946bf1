import { h } from "../dom/element.ts";
import { type DrawnMap, groupsAcross, namesOf } from "./drawn-map.ts";

const MOST_SHOWN = 40;
const MOST_IN_A_GROUP = 8;

/** Which cells of different guards pass for one: "Guard B, position 4 is Guard A, position 4". */
export function duplicatesView(map: DrawnMap): HTMLElement {
  const groups = groupsAcross(map);
  if (groups.length === 0) return h("p", {}, "No two of these guards have a sound in common.");
  const lines = groups
    .slice(0, MOST_SHOWN)
    .map(([first, ...rest]) => h("li", {}, `${namesOf(map, [first!])} is ${namesOf(map, rest, MOST_IN_A_GROUP)}`));
  const more = groups.length - lines.length;
  return h(
    "div",
    { class: "stack" },
    h("ul", { class: "map-list" }, lines),
    more > 0 && h("p", { class: "hint" }, `and ${more} more such groups`),
  );
}
