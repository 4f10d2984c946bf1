import type { StringLevelsQuestion } from "../../audio/string-levels/usable-plucks.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import { h } from "../dom/element.ts";
import { type FormField, formText } from "../fields/form-fields.ts";
import { bareInput } from "./bare-input.ts";

/** Reads the levels of a recording, from string 1. @throws Error in the refusal's words */
export type ReadRecording = (file: Uint8Array, question: StringLevelsQuestion) => Promise<readonly number[]>;

/** A position at one height: its levels typed, or read from a recording dropped on it. */
export interface LevelRow {
  readonly element: HTMLElement;
  readonly field: FormField;
  readonly settings: RawSettings;
  /** From string 1; nothing where it is left empty. */
  read(): number[] | undefined;
  /** Tells at which place of the request it was sent. */
  sentAs(index: number): void;
}

/** Numbers as people list them, a minus of any kind before them. */
export function levelsIn(text: string): number[] {
  return text
    .replaceAll(/[−–]/g, "-")
    .split(/[\s;]+|,\s+/)
    .filter(Boolean)
    .map((word) => Number(word.replace(/,$/, "").replace(",", ".")));
}

interface RowSpec {
  readonly label: string;
  readonly settings: RawSettings;
  readonly strings: number;
  readonly order: () => StringLevelsQuestion["order"];
}

export function createLevelRow({ label, settings, strings, order }: RowSpec, readRecording: ReadRecording): LevelRow {
  const text = formText("levels", `${label}: dB from string 1`, "", Array(strings).fill("-20").join(" "));
  const input = bareInput(text);
  const status = h("p", { class: "hint", role: "status" });
  const take = async (file: File) => {
    text.showFault(undefined);
    status.textContent = `Reading ${file.name}…`;
    try {
      const question = { strings, plucks: undefined, order: order() };
      const levels = await readRecording(new Uint8Array(await file.arrayBuffer()), question);
      input.value = levels.map((level) => level.toFixed(1)).join(" ");
      status.textContent = `${file.name}: ${strings} strings read.`;
    } catch (error) {
      status.textContent = "";
      text.showFault(`${file.name}: ${(error as Error).message}`);
    }
  };
  const picker = h("input", { type: "file", accept: ".wav,audio/wav", "aria-label": `${label}: a recording` });
  picker.addEventListener("change", () => {
    const [file] = picker.files ?? [];
    if (file) void take(file);
    // The same file may be taken again after another recording under its name.
    picker.value = "";
  });
  const element = h("div", { class: "level-row" }, text.element, h("div", { class: "field" }, picker, status));
  element.addEventListener("dragover", (event) => event.preventDefault());
  element.addEventListener("drop", (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) void take(file);
  });
  let index = -1;
  const field: FormField = {
    ...text,
    get path() {
      return `levels.${index}`;
    },
  };
  return {
    element,
    field,
    settings,
    read: () => (text.read() === "" ? undefined : levelsIn(text.read())),
    sentAs: (at) => {
      index = at;
    },
  };
}
