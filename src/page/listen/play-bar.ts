import { createSwitch } from "../controls/on-off.ts";
import { h } from "../dom/element.ts";
import { createFold } from "../dom/fold.ts";
import type { AppStore } from "../state/app-state.ts";
import type { AudioRoom } from "./audio-room.ts";
import { createThroughPicker } from "./chain/through-picker.ts";
import { createChosenWords } from "./chosen-words.ts";
import { createDownloadSet } from "./download-set.ts";
import type { Listening } from "./listening.ts";
import { createLiveInput } from "./live-input.ts";
import { createNoiseSwitch } from "./noise-switch.ts";
import { createOwnSound } from "./own-sound.ts";
import { createPlayingPicker } from "./playing-picker.ts";
import { createSignalPicker } from "./signal-picker.ts";

const PLAY_LABELS = { no: "Play this setting", loading: "Rendering…", yes: "Stop" } as const;

function playButton(store: AppStore, listening: Listening): HTMLElement {
  const button = h("button", { type: "button", class: "primary play", onclick: () => void listening.toggle() });
  store.watch(
    (state) => [state.playing],
    (playing) => {
      button.textContent = PLAY_LABELS[playing];
      button.setAttribute("aria-pressed", String(playing === "yes"));
    },
  );
  return button;
}

/** Play, what is played, and how. */
export function createPlayBar(
  store: AppStore,
  listening: Listening,
  room: AudioRoom,
): { readonly element: HTMLElement; fill(): Promise<void> } {
  const signals = createSignalPicker(store);
  const playing = createPlayingPicker(store);
  const through = createThroughPicker(store, room);
  const words = createChosenWords(store, [signals.element, ...playing.elements, through.element]);
  const matched = createSwitch("Same loudness", (levelMatched) => store.set({ levelMatched }));
  const loop = createSwitch("Loop", (value) => store.set({ loop: value }));
  store.watch((state) => [state.levelMatched], matched.show);
  store.watch((state) => [state.loop], loop.show);
  const element = h(
    "div",
    { class: "play-bar" },
    playButton(store, listening),
    h("p", { class: "hint low-volume" }, "Begin at a low volume."),
    createFold(
      "What is played, and how",
      h(
        "div",
        { class: "play-choices" },
        signals.element,
        ...playing.elements,
        through.element,
        words.element,
        through.more,
        createOwnSound(store),
        createNoiseSwitch(store),
        matched.element,
        loop.element,
        createDownloadSet(store),
        createLiveInput(store),
      ),
    ),
  );
  const fill = async () => {
    await Promise.all([signals.fill(), playing.fill()]).catch((error: Error) => store.set({ notice: error.message }));
    words.show();
  };
  return { element, fill };
}
