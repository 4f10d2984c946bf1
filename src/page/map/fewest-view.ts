import type { Cover } from "../../choice/map/fewest-guards.ts";
import { cellName } from "../cells/cell.ts";
import { h } from "../dom/element.ts";
import type { DrawnMap } from "./drawn-map.ts";

function answer({ guards, isFewest, atLeast }: Cover, map: DrawnMap): string {
  const names = guards.map((guard) => map.guards[guard]!.name).join(", ");
  const count = guards.length === 1 ? "One guard has" : `${guards.length} guards have`;
  const sure = isFewest
    ? guards.length === 1
      ? ""
      : " Fewer cannot: all choices were weighed."
    : ` Perhaps fewer can: ${atLeast} at least are needed, and not all choices could be weighed.`;
  return `${count} them all, or sounds that pass for them: ${names}.${sure}`;
}

/** The cells that are liked, and the fewest guards that have them. @param cover undefined where none is liked */
export function fewestView(
  map: DrawnMap,
  liked: readonly number[],
  cover: Cover | undefined,
  unlike: (dot: number) => void,
): HTMLElement {
  if (!cover) return h("p", {}, "Mark the sounds you like: then the fewest guards that have them all are told here.");
  return h(
    "div",
    { class: "stack" },
    h("p", { role: "status" }, h("b", {}, answer(cover, map))),
    h(
      "ul",
      { class: "map-list" },
      liked.map((dot) => {
        const name = cellName(map.dots[dot]!);
        return h(
          "li",
          { class: "liked-line" },
          h("span", {}, name),
          h(
            "button",
            { type: "button", class: "quiet", "aria-label": `No longer like ${name}`, onclick: () => unlike(dot) },
            "No longer",
          ),
        );
      }),
    ),
  );
}
