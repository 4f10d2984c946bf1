import { SYMPTOMS, type SymptomCode } from "../../bench/symptoms/symptom-codes.ts";
import type { SymptomRequest } from "../../contract/diagnose.ts";
import { h, replaceContent } from "../dom/element.ts";
import { type FormField, formChoice } from "../fields/form-fields.ts";
import type { Option } from "../fields/plain-fields.ts";
import type { AppStore } from "../state/app-state.ts";
import { partLabel, positionNames } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";

export interface SymptomPicker {
  readonly element: HTMLElement;
  read(): readonly SymptomRequest[];
}

const CODES: readonly Option[] = Object.entries(SYMPTOMS).map(([value, label]) => ({ value, label }));
const ANYWHERE: Option = { value: "", label: "in any position" };
const EVERY: Option = { value: "", label: "every one" };

function positionOptions({ controls }: Reading): Option[] {
  const names = controls.main ? positionNames(controls.main) : [];
  return [ANYWHERE, ...names.map((name, index) => ({ value: String(index + 1), label: `in position ${name}` }))];
}

function potOptions({ build, controls }: Reading): Option[] {
  return [EVERY, ...controls.pots.map((name) => ({ value: name, label: partLabel(build, name) }))];
}

function symptomText(reading: Reading, { code, settings, control }: SymptomRequest): string {
  const where = settings ? `, position ${Object.values(settings).join()}` : "";
  return `${SYMPTOMS[code]}${control ? ` (${partLabel(reading.build, control)})` : ""}${where}`;
}

interface Fields {
  readonly code: FormField;
  readonly position: FormField;
  readonly pot: FormField;
}

function fieldsFor(reading: Reading): Fields {
  const code = formChoice("symptoms", "What you noticed", CODES);
  const position = formChoice("symptoms.settings", "Where", positionOptions(reading));
  const pot = formChoice("symptoms.control", "Which pot", potOptions(reading));
  const show = () => {
    pot.element.hidden = !/^(tone|volume|pot)-/.test(code.read());
  };
  code.element.addEventListener("change", show);
  show();
  return { code, position, pot };
}

function symptomOf({ controls }: Reading, { code, position, pot }: Fields): SymptomRequest {
  const at = position.read();
  const control = pot.element.hidden ? "" : pot.read();
  return {
    code: code.read() as SymptomCode,
    ...(at && controls.main ? { settings: { [controls.main.name]: Number(at) } } : {}),
    ...(control ? { control } : {}),
  };
}

/** What a person heard or felt, told without a meter. */
export function createSymptoms(store: AppStore): SymptomPicker {
  let told: readonly SymptomRequest[] = [];
  const list = h("ul", { class: "told" });
  const holder = h("div", { class: "row add-row" });
  const showTold = () => {
    const { reading } = store.state;
    if (!reading) return;
    const remove = (symptom: SymptomRequest) => () => {
      told = told.filter((each) => each !== symptom);
      showTold();
    };
    replaceContent(
      list,
      told.map((each) =>
        h(
          "li",
          {},
          symptomText(reading, each),
          h("button", { type: "button", class: "quiet", onclick: remove(each) }, "Take back"),
        ),
      ),
    );
  };
  store.watch(
    (state) => [state.reading],
    (reading) => {
      told = [];
      showTold();
      if (!reading) return;
      const fields = fieldsFor(reading);
      const add = () => {
        told = [...told, symptomOf(reading, fields)];
        showTold();
      };
      const button = h("button", { type: "button", onclick: add }, "Add what you noticed");
      replaceContent(holder, fields.code.element, fields.position.element, fields.pot.element, button);
    },
  );
  return { element: h("div", { class: "stack no-print" }, holder, list), read: () => told };
}
