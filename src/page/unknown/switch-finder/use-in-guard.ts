import type { SwitchQuestion } from "../../../bench/switch-finder/question.ts";
import type { BuildInput } from "../../../build-file/schema.ts";
import type { SwitchAnswer } from "../../../contract/bench/switch-finder.ts";
import { listed } from "../../../english.ts";
import { benchEngineOf } from "../../bench/bench-desk.ts";
import { h, replaceContent } from "../../dom/element.ts";
import { type FormField, formChoice } from "../../fields/form-fields.ts";
import type { AppStore } from "../../state/app-state.ts";
import type { Editor } from "../../state/editor.ts";
import type { BuildSource } from "../../state/reading.ts";
import { speechOf } from "../../words/lug-speech.ts";
import { tellUntilChanged } from "../tell-until-changed.ts";

/** The switches of the guard on the bench, as a person calls them. */
function switchOptions({ state: { reading } }: AppStore) {
  if (!reading) return [];
  const { words } = speechOf(reading);
  return Object.entries(reading.build.parts).flatMap(([name, part]) =>
    part.kind === "switch" ? [{ value: name, label: words.parts.get(name) ?? name }] : [],
  );
}

/** Of each lug of the old switch whose job cannot be told, which found lug takes its wires. */
function movesForm(store: AppStore, part: string, asks: SwitchAnswer["asks"], { lugs }: SwitchQuestion): FormField[] {
  const speech = speechOf(store.state.reading!);
  const options = lugs.map(({ name }) => ({ value: name, label: `your lug ${name}` }));
  return asks.map(({ lug, wires }) => {
    const ends = listed(wires.map((end) => speech.words.of(end)));
    return formChoice(lug, `${speech.words.of(`${part}.${lug}`)}, wired to ${ends}`, options);
  });
}

/** Puts the found switch into the guard on the bench, in the place of one of its switches. */
export function createUseInGuard(store: AppStore, editor: Editor, question: SwitchQuestion): HTMLElement {
  const options = switchOptions(store);
  if (options.length === 0)
    return h("p", { class: "hint" }, "The guard on the bench has no switch whose place it could take.");
  const place = formChoice("part", "In the place of", options);
  const asked = h("div", { class: "stack" });
  const said = h("p", { role: "status" });
  let fields: readonly FormField[] = [];
  const forget = () => {
    fields = [];
    replaceContent(asked);
    said.textContent = "";
  };
  place.element.addEventListener("change", forget);
  const use = async () => {
    const { source } = store.state;
    if (!source) return;
    const part = place.read();
    const moves = Object.fromEntries(fields.map((field) => [field.path, field.read()]));
    const { guard, asks } = await benchEngineOf(store).findSwitch({
      ...question,
      source: source as BuildInput,
      part,
      moves,
    });
    if (!guard) {
      fields = [...fields, ...movesForm(store, part, asks, question)];
      replaceContent(
        asked,
        h("p", {}, "Say which of its lugs takes these wires, then press again."),
        fields.map(({ element }) => element),
      );
      return;
    }
    forget();
    await editor.rework(() => guard as BuildSource);
    tellUntilChanged(store, said, "It is in the guard, its lugs as you found them. Undo takes it out again.");
  };
  const button = h("button", { type: "button", class: "primary", onclick: () => void use() }, "Use it in this guard");
  return h("div", { class: "stack" }, place.element, asked, h("div", { class: "buttons" }, button), said);
}
