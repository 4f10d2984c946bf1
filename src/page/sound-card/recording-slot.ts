import { acceptDrops } from "../dom/accept-drops.ts";
import { type Child, freshId, h } from "../dom/element.ts";
import { createFaultLine } from "../fields/fault-line.ts";
import type { FormField } from "../fields/form-fields.ts";
import { saveFile } from "../server/save-file.ts";
import { captureMissing } from "./open-input.ts";
import type { RecordingWanted } from "./way.ts";

/** A recording's place: a file chosen, dropped or recorded, and what is wrong with it. Folded, it is a line that says what is there. */
export interface RecordingSlot<Name extends string = string> extends FormField {
  /** Hears `put` whenever what it holds changes. */
  readonly element: HTMLDetailsElement;
  readonly name: Name;
  readonly isStereo: boolean;
  readonly record: HTMLButtonElement;
  readonly file: File | undefined;
  /** What the output stood at where the page itself made the recording. */
  readonly decibels: number | undefined;
  put(file: File | undefined, decibels?: number): void;
}

/** A button that says to a screen reader which recording it is for. */
const buttonFor = (label: string, text: string, className = "") =>
  h("button", { type: "button", class: className, "aria-label": `${text}: ${label}` }, text);

const NONE_YET = "none yet, or drop one here";

/** @param about how this recording is made */
export function createRecordingSlot<Name extends string>(
  { name, label, isOptional, isStereo = false }: RecordingWanted<Name>,
  ...about: Child[]
): RecordingSlot<Name> {
  const title = isOptional ? `${label} (may be left out)` : label;
  const input = h("input", { type: "file", accept: ".wav,audio/wav,audio/x-wav", "aria-label": title });
  const { element: fault, tell: showFault } = createFaultLine(input, freshId("recording-fault"));
  const told = h("span", { class: "hint", role: "status" });
  const record = buttonFor(label, "Record");
  const save = buttonFor(label, "Save", "quiet");
  const away = buttonFor(label, "Leave out", "quiet");
  const done = h("b", { class: "slot-done", hidden: true }, "✓", h("span", { class: "heading" }, " there"));
  const element = h(
    "details",
    { class: "recording-slot", open: true },
    h("summary", {}, title, done),
    h("div", { class: "stack" }, about, h("div", { class: "row" }, record, input, save, away), told, fault),
  );
  let file: File | undefined;
  let decibels: number | undefined;
  const put = (next: File | undefined, madeAt?: number) => {
    file = next;
    decibels = madeAt;
    told.textContent = next ? `${next.name}, ${(next.size / 1e6).toFixed(1)} MB` : NONE_YET;
    done.hidden = save.hidden = away.hidden = next === undefined;
    // The same file, mended, can be chosen again; and a choice that was recorded over is none.
    if (next !== input.files?.[0]) input.value = "";
    showFault(undefined);
    element.dispatchEvent(new Event("put"));
  };
  input.addEventListener("change", () => input.files?.[0] && put(input.files[0]));
  save.addEventListener("click", () => file && saveFile(file.name, file));
  away.addEventListener("click", () => {
    put(undefined);
    record.focus();
  });
  acceptDrops(element, (dropped) => dropped && put(dropped));
  put(undefined);
  record.hidden = captureMissing() !== undefined;
  return {
    name,
    isStereo,
    path: name,
    element,
    record,
    get file() {
      return file;
    },
    get decibels() {
      return decibels;
    },
    read: () => file?.name ?? "",
    put,
    showFault,
  };
}
