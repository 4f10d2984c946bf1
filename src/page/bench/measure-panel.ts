import { overSign } from "../../bench/meter/own/display.ts";
import { rangeText, showOhms } from "../../bench/meter/shown.ts";
import type { BenchAnswer } from "../../contract/bench/bench.ts";
import type { MeasuredRequest } from "../../contract/diagnose.ts";
import { capitalised } from "../../english.ts";
import type { KeptValue } from "../../shelf/guard.ts";
import { h, replaceContent } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { createExamineFold } from "../examine/examine-fold.ts";
import { createFormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { Bench } from "../start/bench.ts";
import type { AppStore } from "../state/app-state.ts";
import { type LugSpeech, speechOf } from "../words/lug-speech.ts";
import { keepBench } from "./bench-desk.ts";
import { benchRefusal } from "./bench-refusal.ts";
import { createCautions } from "./cautions.ts";
import { diagnosisView } from "./diagnosis-view.ts";
import { createJointAge } from "./joint-age.ts";
import { createKeepMeasured } from "./keep-measured.ts";
import { type MeterAtHand, measuredField, type Written } from "./measured.ts";
import { meterInUse, meterTold } from "./meter/kept-meter.ts";
import { createMeterControl } from "./meter/meter-control.ts";
import { createMeterRange } from "./meter/meter-range.ts";
import { createNumberSetting } from "./number-setting.ts";
import { createOwnProbe } from "./own-probe.ts";
import { createSolveBackwards } from "./solve-backwards.ts";
import { createSymptoms } from "./symptoms.ts";

interface ReadingTable {
  readonly element: HTMLElement;
  read(): MeasuredRequest[];
  /** As it was written, readable or not. */
  written(): KeptValue[];
}

interface AtHand extends MeterAtHand {
  readonly written: Written;
  readonly speech: LugSpeech;
}

function readingTable(bench: BenchAnswer, atHand: AtHand): ReadingTable {
  const { meter, written, speech } = atHand;
  // The answer may still be of the meter before.
  const isOnMeter = bench.meter !== undefined && meter !== undefined;
  const all = [...bench.readings, ...bench.probes].map((reading) => ({
    reading,
    field: measuredField(reading, atHand, written),
  }));
  const rows = all.map(({ reading, field }) => [
    speech.say(reading.label),
    field.element,
    showOhms(reading.ohms),
    ...(isOnMeter ? [reading.meter?.text ?? ""] : []),
    rangeText(reading, isOnMeter ? overSign(meter) : ""),
    speech.say(reading.between.join(" to ")),
  ]);
  return {
    element: plainTable(
      `What a meter must read, nothing plugged in, coils at ${bench.temperature} °C`,
      ["Where", "You measured", "Should read", ...(isOnMeter ? ["On your meter"] : []), "Within", "Probes on"],
      rows,
    ),
    read: () => all.flatMap(({ field }) => field.read() ?? []),
    written: () =>
      all
        .map(({ reading, field }) => ({ what: reading.label, read: field.written() }))
        .filter(({ read }) => read !== ""),
  };
}

function temperatureField(store: AppStore): HTMLElement {
  const { temperature: value } = store.state.benchOptions;
  return createNumberSetting(
    { name: "temperature", label: "Room and coils, °C", unit: "°C", value, min: -40, max: 100 },
    (temperature) => store.set({ benchOptions: { ...store.state.benchOptions, temperature } }),
  );
}

function meterNotes({ meter }: BenchAnswer): HTMLElement | false {
  return (
    meter !== undefined &&
    h(
      "ul",
      { class: "hint meter-notes" },
      meter.notes.map((text) => h("li", {}, text)),
    )
  );
}

function phaseView({ phaseCheck }: BenchAnswer, speech: LugSpeech): HTMLElement {
  return h(
    "section",
    { class: "stack" },
    h("h3", {}, "Phase check"),
    h(
      "ol",
      {},
      phaseCheck.how.map((text) => h("li", {}, speech.say(text))),
    ),
    h(
      "ul",
      {},
      phaseCheck.pickups.map(({ pickup, message }) =>
        h("li", {}, h("b", {}, `${capitalised(speech.words.parts.get(pickup) ?? pickup)}: `), speech.say(message)),
      ),
    ),
  );
}

/** What a meter must read, and what may be wrong where it reads something else. Printable. */
export function createMeasurePanel(bench: Bench): HTMLElement {
  const { store } = bench;
  keepBench(store);
  const table = h("div", {});
  const phase = h("div", {});
  const refusal = h("div", { role: "alert" });
  const meterControl = createMeterControl(store);
  const range = createMeterRange(store);
  const symptoms = createSymptoms(store);
  const joints = createJointAge();
  /** By guard: one that comes back by undoing brings what was measured on it along. */
  const writtenOn = new WeakMap<object, Written>();
  let current: ReadingTable | undefined;
  const readMeasured = () => {
    const { temperature, meter } = store.state.benchOptions;
    const age = joints.read();
    return {
      readings: current?.read() ?? [],
      ...(age === "" ? {} : { joints: age }),
      temperature,
      ...(meter ? { meter: meterTold(meter) } : {}),
    };
  };
  const run = createFormRun(
    "What explains this?",
    () => [],
    async () => {
      const { reading } = store.state;
      const measured = readMeasured();
      const told = symptoms.read();
      if (!reading || measured.readings.length + told.length === 0)
        throw new Error("Enter at least one reading, or add something that you noticed.");
      const body = { build: reading.source, ...measured, ...(told.length > 0 ? { symptoms: told } : {}) };
      const meter = meterInUse(store);
      return diagnosisView(await postJson("/api/diagnose", body), reading, {
        speech: speechOf(reading),
        over: meter ? overSign(meter) : "",
      });
    },
  );
  store.watch(
    (state) => [state.bench, state.benchFault, state.benchOf] as const,
    (bench, fault, of) => {
      replaceContent(refusal, benchRefusal(fault));
      if (!bench || !of) {
        current = undefined;
        replaceContent(table, !fault && h("p", { class: "hint" }, "Working out the readings…"));
        replaceContent(phase);
        return;
      }
      const { guard } = store.state;
      const written = writtenOn.get(guard) ?? new Map();
      writtenOn.set(guard, written);
      current = readingTable(bench, { range, meter: meterInUse(store), written, speech: speechOf(of) });
      replaceContent(table, current.element, meterNotes(bench));
      replaceContent(phase, phaseView(bench, speechOf(of)));
    },
  );
  store.watchAny(
    (state) => [state.reading],
    () => replaceContent(run.answer),
  );
  return h(
    "div",
    { class: "sections" },
    h(
      "section",
      { class: "stack" },
      createCautions(true),
      h(
        "div",
        { class: "row add-row no-print" },
        meterControl,
        temperatureField(store),
        range.element,
        h("button", { type: "button", onclick: () => print() }, "Print the readings"),
      ),
      refusal,
      table,
      createOwnProbe(store),
      symptoms.element,
      h("div", { class: "row no-print" }, joints.element),
      h("div", { class: "buttons no-print" }, run.button),
      createKeepMeasured(bench, () => current?.written() ?? []),
      run.answer,
      createExamineFold(store, readMeasured),
    ),
    phase,
    createSolveBackwards(store),
  );
}
