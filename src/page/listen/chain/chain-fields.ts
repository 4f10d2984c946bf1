import { DRIVE_BASIS } from "../../../listening/drive/law.ts";
import { SPEAKER, SPEAKER_BASIS } from "../../../listening/speaker/figures.ts";
import { createDial } from "../../controls/dial.ts";
import { acceptDrops } from "../../dom/accept-drops.ts";
import { freshId, h } from "../../dom/element.ts";
import type { AppStore } from "../../state/app-state.ts";
import type { AudioRoom } from "../audio-room.ts";

/** Takes a file at once, and gives it back with the reason as soon as it turns out to be no cabinet. */
async function take(store: AppStore, room: AudioRoom, file: File | undefined): Promise<void> {
  if (!file) return;
  store.set({ cabinet: { name: file.name, file }, notice: "" });
  try {
    await room.checkCabinet();
  } catch (error) {
    if (store.state.cabinet?.file !== file) return;
    store.set({ cabinet: undefined, notice: `${file.name} cannot be heard through: ${(error as Error).message}` });
  }
}

function cabinetField(store: AppStore, room: AudioRoom): HTMLElement {
  const id = freshId("cabinet");
  const input = h("input", {
    id,
    type: "file",
    accept: ".wav,audio/wav,audio/x-wav",
    class: "file-input",
    onchange: () => void take(store, room, input.files?.[0]),
  });
  const name = h("span", { class: "file-name" });
  const element = h(
    "div",
    { class: "drop" },
    h("label", { for: id, class: "button" }, "Your cabinet's WAV…"),
    input,
    name,
  );
  acceptDrops(element, (file) => void take(store, room, file));
  store.watch(
    (state) => [state.cabinet, state.heardThrough],
    (cabinet, heardThrough) => {
      element.hidden = heardThrough !== "own";
      name.textContent = cabinet
        ? `${cabinet.name}, brought to the usual speaker's level; to be chosen again when the page is loaded anew`
        : "its impulse response, up to a second, which no page keeps from one visit to the next; until there is one the usual speaker is heard";
      // The same file, mended, can be chosen again.
      if (!cabinet) input.value = "";
    },
  );
  return element;
}

function figures(): HTMLElement {
  const { highPass, presence, lowPass } = SPEAKER;
  return h(
    "details",
    { class: "plain-fold" },
    h("summary", {}, "What amplifier and speaker are"),
    h(
      "p",
      { class: "hint" },
      `Speaker: it falls by 12 dB an octave below ${highPass.hertz} Hz, gives ${presence.decibels} dB more about ${presence.hertz / 1000} kHz, and falls by ${6 * lowPass.order} dB an octave above ${lowPass.hertz / 1000} kHz. Why so: ${SPEAKER_BASIS}.`,
    ),
    h(
      "p",
      { class: "hint" },
      `Amplifier: flat. Drive: ${DRIVE_BASIS}. Full scale of a recording or of the live input counts as 1 V.`,
    ),
  );
}

/** How hard the amplifier is driven, and the cabinet behind it. */
export function createChainFields(store: AppStore, room: AudioRoom): HTMLElement {
  const drive = createDial("Drive", (value) => store.set({ drive: value }));
  store.watch((state) => [state.drive], drive.show);
  return h(
    "div",
    { class: "chain-fields" },
    h(
      "p",
      { class: "hint" },
      "Begin at a low volume. Driven by the volts at the jack, so it cleans up as the guard is turned down; never in a curve.",
    ),
    drive.element,
    cabinetField(store, room),
    figures(),
  );
}
