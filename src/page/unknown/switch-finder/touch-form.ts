import { freshId, h } from "../../dom/element.ts";

interface Touch {
  readonly between: readonly [string, string];
  readonly positions: number;
  readonly why: string;
}

function chip(position: number): { element: HTMLElement; box: HTMLInputElement } {
  const box = h("input", { type: "checkbox", value: position });
  return { box, element: h("label", { class: "beep-chip" }, box, h("span", {}, `Position ${position}`)) };
}

/** What two lugs do: ticked where it beeps. @param tell told the positions, once the person goes on */
export function createTouchForm({ between, positions, why }: Touch, tell: (positions: number[]) => void): HTMLElement {
  const chips = Array.from({ length: positions }, (_, index) => chip(index + 1));
  const note = freshId("touch-why");
  return h(
    "form",
    {
      class: "stack touch-form",
      onsubmit: (event: Event) => {
        event.preventDefault();
        tell(chips.flatMap(({ box }) => (box.checked ? [Number(box.value)] : [])));
      },
    },
    h("p", { class: "touch-next", role: "status" }, "Touch ", h("b", {}, between[0]), " and ", h("b", {}, between[1])),
    h("p", { class: "hint", id: note }, `Go through all positions and tick those in which it beeps. ${why}`),
    h(
      "fieldset",
      { class: "beep-chips", "aria-describedby": note },
      h("legend", {}, "It beeps in"),
      chips.map(({ element }) => element),
    ),
    h("div", { class: "buttons" }, h("button", { type: "submit", class: "primary" }, "Next")),
  );
}
