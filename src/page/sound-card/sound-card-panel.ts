import type { RecordingName } from "../../contract/measure/measure.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { formChoice } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { askMeasure } from "./ask-measure.ts";
import { measuredView } from "./measured-view.ts";
import { requireOneLevel } from "./one-level.ts";
import { type OpenWay, openWay, WAYS, type WayName } from "./open-way.ts";
import { createRecordInto, signalRecorder } from "./record-into.ts";
import { createRecordSection } from "./record-section.ts";
import { createSoundCardCautions } from "./sound-card-cautions.ts";
import { createSoundFields, type SoundFields } from "./sound-fields.ts";

const PRIVACY =
  "Recordings go to the service to be worked out, and nothing of them is kept there. Without a net neither the signal nor an answer" +
  " can be had: record with another program from a signal saved before, and bring the files when there is a net.";

/** The chosen way; what was put into one stays while another is looked at. */
function createWays(record: Parameters<typeof openWay>[1]) {
  const opened = new Map<WayName, OpenWay>();
  const choice = formChoice<WayName>("part", "What is measured", WAYS);
  const current = (): OpenWay => {
    const name = choice.read();
    const way = opened.get(name) ?? openWay(name, record);
    opened.set(name, way);
    return way;
  };
  return { choice, current };
}

function createMeasureRun(ways: ReturnType<typeof createWays>, sound: SoundFields, store: AppStore, editor: Editor) {
  const fields = () => [ways.choice, ...sound.fields, ...ways.current().fields, ...ways.current().slots];
  return createFormRun("Work out the values", fields, async () => {
    const { slots, body, recordings } = ways.current();
    const files = slots.flatMap(({ name, file }) => (file ? [[name, file] as const] : []));
    const request = body(sound.kind(), new Set(files.map(([name]) => name)));
    requireOneLevel(request, slots);
    const answer = await askMeasure(request, files);
    const called = (name: RecordingName) => recordings.find((each) => each.name === name)?.label ?? name;
    const part = request.method === "series-resistor" ? request.part : undefined;
    return measuredView(answer, part, store, editor, called);
  });
}

/** Measuring a pickup, a part or a lead with an audio interface. */
export function createSoundCardPanel(store: AppStore, editor: Editor): HTMLElement {
  bringStyle("tools.css");
  const sound = createSoundFields();
  const lock = (isBusy: boolean) => {
    for (const { record } of ways.current().slots) record.disabled = isBusy;
    ways.choice.element.querySelector("select")!.disabled = isBusy;
    run.button.disabled = isBusy;
    sound.player.lock(isBusy);
  };
  const recordInto = createRecordInto(signalRecorder(sound), lock);
  const ways = createWays((slot) => void recordInto(slot));
  const run = createMeasureRun(ways, sound, store, editor);
  const [told, known, slots] = [h("div"), h("div"), h("div")];
  const show = () => {
    const way = ways.current();
    replaceContent(told, way.instructions);
    replaceContent(known, way.known);
    replaceContent(slots, way.slotList);
    replaceContent(run.answer);
  };
  ways.choice.element.addEventListener("change", show);
  show();
  return h(
    "section",
    { class: "stack sound-card", "aria-label": "Measuring with an audio interface" },
    createSoundCardCautions(),
    ways.choice.element,
    told,
    h("h4", {}, "What is known"),
    known,
    h("h4", {}, "Record, or bring WAV files"),
    createRecordSection(sound, slots, h("div", { class: "row add-row" }, sound.player.button, sound.player.told)),
    h("p", { class: "hint" }, PRIVACY),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
