import { h } from "../dom/element.ts";
import { captureMissing } from "./open-input.ts";
import type { SoundFields } from "./sound-fields.ts";

const HERE =
  "The page plays the signal and records at once. Choose the interface as this machine's sound output, and switch its effects and" +
  " direct monitoring off.";
const ELSEWHERE =
  "Save the signal at the rate that your interface runs at, play it from its own track while you record on another, in 24 bits and" +
  " with no effect, and choose the files above. Start to record first, and stop a second after its end.";

function createElsewhere(sound: SoundFields, beside: HTMLElement | undefined): HTMLElement {
  const save = sound.createSave("Save the signal as a file");
  return h(
    "details",
    {},
    h("summary", {}, "Record with another program"),
    h("p", { class: "hint" }, ELSEWHERE),
    h("div", { class: "row add-row" }, sound.rate, save.button),
    save.answer,
    beside,
  );
}

/**
 * How recordings are made: here, or elsewhere and brought as files.
 * @param slots their places
 * @param player what plays the signal alone, where that stands nowhere else
 */
export function createRecordSection(sound: SoundFields, slots: HTMLElement, player?: HTMLElement): HTMLElement {
  const missing = captureMissing();
  return h(
    "div",
    { class: "stack" },
    missing === undefined ? h("p", { class: "hint" }, HERE) : h("p", { class: "fault-text" }, missing),
    sound.played,
    slots,
    createElsewhere(sound, player),
  );
}
