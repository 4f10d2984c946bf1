import type { GuardName } from "../cells/cell.ts";
import { markSign } from "../cells/mark-sign.ts";
import { h, replaceContent } from "../dom/element.ts";

/** Guards beyond this many are not on the map until they are ticked. */
const TICKED_AT_FIRST = 40;

export interface GuardTicks {
  readonly element: HTMLElement;
  readonly ticked: readonly GuardName[];
  show(guards: readonly GuardName[]): void;
}

/** Which guards are on the map, with the mark of each. @param changed told when that changes by hand */
export function createGuardTicks(changed: () => void): GuardTicks {
  const list = h("div", { class: "map-guards" });
  const unticked = new Set<string>();
  const known = new Set<string>();
  let all: readonly GuardName[] = [];
  const ticked = () => all.filter(({ id }) => !unticked.has(id));
  const draw = () => {
    const numbers = new Map(ticked().map(({ id }, index) => [id, index]));
    replaceContent(
      list,
      all.map(({ id, name }) => {
        const number = numbers.get(id);
        const input = h("input", { type: "checkbox", checked: number !== undefined, "data-guard": id });
        input.addEventListener("change", () => {
          if (input.checked) unticked.delete(id);
          else unticked.add(id);
          draw();
          [...list.querySelectorAll("input")].find(({ dataset }) => dataset.guard === id)?.focus();
          changed();
        });
        return h(
          "label",
          { class: "tick" },
          input,
          number === undefined ? null : markSign(number),
          h("span", {}, name),
        );
      }),
    );
  };
  return {
    element: h("fieldset", { class: "plain" }, h("legend", {}, "Guards on the map"), list),
    get ticked() {
      return ticked();
    },
    show: (guards) => {
      all = guards;
      for (const [index, { id }] of guards.entries()) {
        if (!known.has(id) && index >= TICKED_AT_FIRST) unticked.add(id);
        known.add(id);
      }
      draw();
    },
  };
}
