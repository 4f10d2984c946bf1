import { readEntries } from "../../../shelf/file/read-shelf-file.ts";
import type { Guard } from "../../../shelf/guard.ts";
import { unpacked } from "../../../shelf/packed.ts";
import { h, replaceContent } from "../../dom/element.ts";
import { getJson } from "../../server/client.ts";

interface Offered {
  readonly element: HTMLElement;
  take(read: ReturnType<typeof readEntries>, from: string): Promise<void>;
}

/** One line a guard, each to be left out. */
function guardChoice({ id, name, guitar, state }: Guard) {
  const box = h("input", { type: "checkbox", checked: true, value: id });
  const told = [guitar, state].filter(Boolean).join(", ");
  const element = h("li", {}, h("label", { class: "tick" }, box, h("span", {}, h("b", {}, name), ` ${told}`)));
  return { element, isWanted: () => box.checked };
}

function offer(read: ReturnType<typeof readEntries>, panel: Offered, done: () => void): HTMLElement {
  const choices = read.guards.map((guard) => ({ guard, ...guardChoice(guard) }));
  const take = async () => {
    const guards = choices.filter(({ isWanted }) => isWanted()).map(({ guard }) => guard);
    done();
    await panel.take({ ...read, guards }, "the link");
  };
  const { length } = choices;
  return h(
    "div",
    { class: "stack" },
    h("p", {}, `This link carries ${length} ${length === 1 ? "guard" : "guards"}. None is kept before you say so:`),
    h(
      "ul",
      { class: "linked-guards" },
      choices.map(({ element }) => element),
    ),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", class: "primary", onclick: () => void take() }, "Put these on my shelf"),
      h("button", { type: "button", onclick: done }, "Leave them"),
    ),
  );
}

/** Shows what a link carries, and asks which of it is to be kept. */
export async function offerLinked(panel: Offered, code: string): Promise<void> {
  const place = h("section", { class: "shelf-offer", "aria-label": "What the link carries" });
  const done = () => {
    place.remove();
    // Loaded again, the page would ask again.
    history.replaceState(null, "", "/");
  };
  panel.element.prepend(place);
  try {
    const { guards } = await getJson(`/api/shelf-link/${code}`);
    replaceContent(place, offer(readEntries(guards.map(unpacked)), panel, done));
  } catch (error) {
    replaceContent(place, h("p", { role: "alert" }, `This link cannot be opened: ${(error as Error).message}`));
  }
}
