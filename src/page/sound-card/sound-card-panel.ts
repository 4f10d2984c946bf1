import type { RecordingName } from "../../contract/measure/measure.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { formChoice } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { askMeasure } from "./ask-measure.ts";
import { measuredView } from "./measured-view.ts";
import { captureMissing } from "./open-input.ts";
import { pickupWay } from "./pickup-way.ts";
import { createRecordInto } from "./record-into.ts";
import { createRecordingSlot, type RecordingSlot } from "./recording-slot.ts";
import { resistorWay } from "./resistor-way.ts";
import { createSoundCardCautions } from "./sound-card-cautions.ts";
import { createSoundFields } from "./sound-fields.ts";
import type { Way } from "./way.ts";

const WAYS = [
  { value: "pickup", label: "a pickup, by an exciter coil and a load" },
  { value: "coil", label: "a coil, behind a resistor" },
  { value: "capacitor", label: "a cap" },
  { value: "resistor", label: "a resistor or a pot's track" },
  { value: "lead", label: "a lead's capacitance" },
] as const;

type WayName = (typeof WAYS)[number]["value"];

const PRIVACY =
  "Recordings go to the service to be worked out, and nothing of them is kept there. So measuring needs the service: without a net," +
  " save the recordings and send them later.";

/** A way with the places of its recordings; what is put there stays while another way is looked at. */
interface OpenWay extends Way {
  readonly slots: readonly RecordingSlot[];
}

function openWay(name: WayName): OpenWay {
  const way = name === "pickup" ? pickupWay() : resistorWay(name);
  return { ...way, slots: way.recordings.map(createRecordingSlot) };
}

const listOf = (tag: "ol" | "ul", texts: readonly string[]) =>
  h(
    tag,
    {},
    texts.map((text) => h("li", {}, text)),
  );

function instructions({ picture, needs, steps, budget }: Way): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    picture,
    h("h4", {}, "What you need"),
    listOf("ul", needs),
    h("h4", {}, "Step by step"),
    listOf("ol", steps),
    h("h4", {}, "How sure the answer is"),
    h("p", {}, budget),
  );
}

/** Measuring a pickup, a part or a lead with an audio interface. */
export function createSoundCardPanel(store: AppStore, editor: Editor): HTMLElement {
  bringStyle("tools.css");
  const opened = new Map<WayName, OpenWay>();
  const choice = formChoice<WayName>("part", "What is measured", WAYS);
  const sound = createSoundFields();
  const current = (): OpenWay => {
    const name = choice.read();
    const way = opened.get(name) ?? openWay(name);
    opened.set(name, way);
    return way;
  };
  const everySlot = () => [...opened.values()].flatMap(({ slots }) => slots);
  const recordInto = createRecordInto(sound, everySlot);
  const run = createFormRun(
    "Work out the values",
    () => [choice, ...sound.fields, ...current().fields, ...current().slots],
    async () => {
      const { slots, body, recordings } = current();
      const files = slots.flatMap(({ name, file }) => (file ? [[name, file] as const] : []));
      const answer = await askMeasure(body(sound.kind(), new Set(files.map(([name]) => name))), files);
      const called = (name: RecordingName) => recordings.find((each) => each.name === name)?.label ?? name;
      return measuredView(answer, store, editor, called);
    },
  );
  const told = h("div", { class: "stack" });
  const fields = h("div", { class: "field-row" });
  const slotList = h("div", { class: "recording-slots" });
  const wired = new Set<RecordingSlot>();
  const show = () => {
    const way = current();
    replaceContent(told, instructions(way));
    replaceContent(
      fields,
      way.fields.map(({ element }) => element),
    );
    for (const slot of way.slots) {
      if (!wired.has(slot)) slot.record.addEventListener("click", () => void recordInto(slot));
      wired.add(slot);
    }
    replaceContent(
      slotList,
      way.slots.map(({ element }) => element),
    );
    replaceContent(run.answer);
  };
  choice.element.addEventListener("change", show);
  show();
  const save = createFormRun(
    "Save the signal as a file",
    () => [],
    async () => {
      await sound.save();
      return undefined;
    },
  );
  return h(
    "section",
    { class: "stack sound-card", "aria-label": "Measuring with an audio interface" },
    createSoundCardCautions(),
    choice.element,
    told,
    h("h4", {}, "What is known"),
    fields,
    h("h4", {}, "Record, or bring WAV files"),
    h(
      "p",
      { class: "hint" },
      "The page plays the signal and records at once. Choose the interface as this machine's sound output, and switch its effects and direct monitoring off.",
    ),
    h("p", { class: "hint" }, captureMissing()),
    sound.played,
    slotList,
    h(
      "details",
      {},
      h("summary", {}, "Record with another program"),
      h(
        "p",
        { class: "hint" },
        "Save the signal at the rate that your interface runs at, play it from its own track while you record on another, in 24 bits and with no effect, and choose the files above. Start to record first, and stop a second after its end.",
      ),
      h("div", { class: "row" }, sound.rate, save.button),
      save.answer,
    ),
    h("p", { class: "hint" }, PRIVACY),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
