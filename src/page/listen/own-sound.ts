import { acceptDrops } from "../dom/accept-drops.ts";
import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { checkReadable } from "./own-recordings.ts";

/** Takes a file at once, and gives it back with the reason as soon as it turns out to be no sound. */
async function take(store: AppStore, file: File | undefined): Promise<void> {
  if (!file) return;
  store.set({ ownSound: { name: file.name, file }, notice: "" });
  try {
    await checkReadable(file);
  } catch (error) {
    if (store.state.ownSound?.file === file) store.set({ ownSound: undefined, notice: (error as Error).message });
  }
}

/** Where one drops in a dry recording of one's own, to be played instead of the built-in phrases. */
export function createOwnSound(store: AppStore): HTMLElement {
  const input = h("input", {
    type: "file",
    accept: ".wav,audio/wav,audio/x-wav",
    class: "file-input",
    id: "own-sound",
    onchange: () => void take(store, input.files?.[0]),
  });
  const name = h("span", { class: "file-name" });
  const away = h("button", { type: "button", class: "quiet" }, "Use a phrase again");
  away.addEventListener("click", () => {
    input.value = "";
    store.set({ ownSound: undefined });
  });
  const element = h(
    "div",
    { class: "drop" },
    h("label", { for: "own-sound", class: "button" }, "Your own WAV…"),
    input,
    name,
    away,
  );
  acceptDrops(element, (file) => void take(store, file));
  store.watch(
    (state) => [state.ownSound],
    (ownSound) => {
      name.textContent = ownSound ? `${ownSound.name}, played in this browser` : "or drop one here";
      away.hidden = ownSound === undefined;
      // The same file, mended, can be chosen again.
      if (!ownSound) input.value = "";
    },
  );
  return element;
}
