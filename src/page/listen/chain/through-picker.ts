import { freshId, h } from "../../dom/element.ts";
import { createLazy } from "../../dom/lazy.ts";
import type { AppStore, HeardThrough } from "../../state/app-state.ts";
import type { AudioRoom } from "../audio-room.ts";

const WAYS: readonly (readonly [HeardThrough, title: string, description: string])[] = [
  ["jack", "As it comes out of the jack", "the guard alone, as its curves are"],
  ["clean", "Clean amplifier and 12-inch speaker", "a flat amplifier and a usual speaker, whose figures are stated"],
  ["own", "Clean amplifier and own cabinet", "an impulse response of your own in the speaker's place"],
];

/** What is between the jack and the ear; more about it is loaded once something is. */
export function createThroughPicker(
  store: AppStore,
  room: AudioRoom,
): { readonly element: HTMLElement; readonly more: HTMLElement } {
  const id = freshId("through");
  const options = WAYS.map(([value, title, description]) => h("option", { value, title: description }, title));
  const take = () => store.set({ heardThrough: select.value as HeardThrough });
  const select = h("select", { id, onchange: take }, options);
  const more = createLazy(async () => (await import("./chain-fields.ts")).createChainFields(store, room));
  store.watch(
    (state) => [state.heardThrough],
    (heardThrough) => {
      select.value = heardThrough;
      more.element.hidden = heardThrough === "jack";
      if (heardThrough !== "jack") more.open();
    },
  );
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, "Heard through"), select),
    more: more.element,
  };
}
