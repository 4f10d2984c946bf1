import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { benchEngineOf } from "../../bench/bench-desk.ts";
import { meterInUse } from "../../bench/meter/kept-meter.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { GuardAsked, LeadsTold } from "../../engine/leads-told.ts";
import { type FormField, formChoice } from "../../fields/form-fields.ts";
import type { Option } from "../../fields/plain-fields.ts";
import type { Bench } from "../../start/bench.ts";
import { partLabel } from "../../state/names.ts";
import type { Reading } from "../../state/reading.ts";
import type { Store } from "../../state/store.ts";
import { tellUntilChanged } from "../tell-until-changed.ts";
import { type LeadNotes, requestOf } from "./notes.ts";

type Notes = Store<LeadNotes>;

/** Where it is to go in the guard on the bench; undefined while it is to go nowhere. */
export function guardAsked({ place, reference }: LeadNotes, reading: Reading | undefined): GuardAsked | undefined {
  if (!reading || place === "") return undefined;
  const at = reference.lastIndexOf(" ");
  const [pickup, kick] = [reference.slice(0, at), reference.slice(at + 1)];
  const isThere = reading.build.parts[pickup]?.kind === "pickup";
  return {
    source: reading.source,
    place,
    ...(isThere ? { reference: { pickup, kick: kick as "up" | "down" } } : {}),
  };
}

const NOWHERE: Option = { value: "", label: "choose a place" };
const NOT_TRIED: Option = { value: "", label: "not tried: the guard's word is taken" };

async function placeOptions({ store }: Bench, { build }: Reading): Promise<Option[]> {
  const pickups = partsOfKind(build, "pickup").map(([name]) => ({
    value: name,
    label: `in place of ${partLabel(build, name)}`,
  }));
  if (pickups.length > 0) return [NOWHERE, ...pickups];
  const free = await benchEngineOf(store).freePlaces(build);
  return [NOWHERE, ...free.map((value) => ({ value, label: `on ${value}` }))];
}

function referenceOptions({ build }: Reading): Option[] {
  return [
    NOT_TRIED,
    ...partsOfKind(build, "pickup").flatMap(([name]) =>
      (["up", "down"] as const).map((kick) => ({
        value: `${name} ${kick}`,
        label: `${partLabel(build, name)} kicked ${kick}`,
      })),
    ),
  ];
}

function choiceIn(notes: Notes, key: "place" | "reference", field: FormField): HTMLElement {
  const select = field.element.querySelector("select")!;
  select.value = notes.state[key];
  if (select.value !== notes.state[key]) notes.set({ [key]: "" });
  select.value = notes.state[key];
  select.addEventListener("change", () => notes.set({ [key]: select.value }));
  return field.element;
}

/** What is told about the pickup in the place chosen, and the button that puts it there. */
function placedView({ store, editor }: Bench, notes: Notes, { withGuard, guard }: LeadsTold): HTMLElement {
  if (!withGuard)
    return h(
      "p",
      { class: "hint" },
      "Choose the place that it takes: hot and ground are told so that it is in phase there.",
    );
  const status = h("p", { role: "status" });
  const put = async () => {
    const [request, asked] = [requestOf(notes.state, meterInUse(store)), guardAsked(notes.state, store.state.reading)];
    if (!request || !asked) return;
    const fresh = await benchEngineOf(store).leads({ request, guard: asked });
    const next = fresh.guard;
    if (!next) return;
    await editor.rework(() => next);
    tellUntilChanged(store, status, "It is in the guard. Undo takes it out again.");
  };
  return h(
    "div",
    { class: "stack" },
    h("p", {}, withGuard.text),
    withGuard.wiring && h("p", {}, withGuard.wiring.text),
    withGuard.wiring?.metal && h("p", {}, withGuard.wiring.metal),
    h(
      "ul",
      { class: "told" },
      withGuard.beside.map(({ text }) => h("li", {}, text)),
    ),
    guard &&
      h(
        "div",
        { class: "buttons" },
        h("button", { type: "button", class: "primary", onclick: put }, "Put it into this guard"),
      ),
    status,
  );
}

/** The pickup in the guard on the bench. */
export function createIntoGuard(bench: Bench, notes: Notes): { element: HTMLElement; show(told: LeadsTold): void } {
  const fields = h("div", { class: "field-row" });
  const shown = h("div", {});
  bench.store.watch(
    ({ reading }) => [reading],
    async (reading) => {
      if (!reading) return;
      const places = await placeOptions(bench, reading);
      if (bench.store.state.reading !== reading) return;
      replaceContent(
        fields,
        choiceIn(notes, "place", formChoice("place", "Its place in the guard", places)),
        choiceIn(
          notes,
          "reference",
          formChoice(
            "reference",
            "The same meter, + on the jack's tip, a pickup of the guard tapped",
            referenceOptions(reading),
          ),
        ),
      );
    },
  );
  let last: LeadsTold["withGuard"] | undefined;
  return {
    element: h("div", { class: "stack" }, h("h4", {}, "Into this guard"), fields, shown),
    show: (told) => {
      if (JSON.stringify(last) === JSON.stringify(told.withGuard)) return;
      last = told.withGuard;
      replaceContent(shown, placedView(bench, notes, told));
    },
  };
}
