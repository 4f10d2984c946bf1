import { capitalised } from "../../english.ts";
import { NOISE_BASIS } from "../../listening/noise/basis.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { createChoiceRow } from "../controls/choice-row.ts";
import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly, whileShown } from "../dom/later.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { NoiseReply } from "../engine/noise-asked.ts";
import type { AppStore } from "../state/app-state.ts";
import { levelsTable, remediesTable, type Weighting } from "./noise-tables.ts";

/** Long enough that a knob being turned is asked about once. */
const SETTLED_MS = 250;

/** Flux densities in µT: homes far from gear, our usual, and half a metre from an amplifier's transformer (from memory). */
const ROOMS = [
  { value: "0.05", label: "away from gear", title: "0.05 µT" },
  { value: "0.2", label: "among gear", title: "0.2 µT" },
  { value: "1", label: "beside an amplifier", title: "1 µT" },
] as const;
type Room = (typeof ROOMS)[number]["value"];

const HOW =
  "Every position with the other controls as they stand, beside a strummed chord in the same position: −40 dB is plain in every pause, −60 dB is heard when it is quiet, −80 dB hardly at all. Hear it with “Hum and hiss” beside Play.";

function basisFold(): HTMLElement {
  const lines = Object.entries(NOISE_BASIS).map(([what, words]) =>
    h("li", {}, h("b", {}, `${capitalised(what.replace("-", " "))}: `), words),
  );
  return h("details", {}, h("summary", {}, "What these figures rest on"), h("ul", { class: "hint" }, lines));
}

function answerView(reply: NoiseReply, weighting: Weighting): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h("p", { class: "room-told" }, reply.answer),
    levelsTable(reply, weighting),
    remediesTable(reply, weighting),
    basisFold(),
  );
}

/** How much hums and hisses where, and what would help. */
export function createNoisePanel(store: AppStore): HTMLElement {
  bringStyle("tools.css");
  const engine = benchEngineOf(store);
  const answer = h("div", { "aria-live": "polite" });
  let mains: "50" | "60" = "50";
  let room: Room = "0.2";
  let weighting: Weighting = "flat";
  let reply: NoiseReply | undefined;
  const show = () => {
    if (reply) replaceContent(answer, answerView(reply, weighting));
  };
  const latest = latestOnly();
  const ask = async () => {
    const { reading, settings } = store.state;
    if (!reading) return;
    const isLatest = latest();
    try {
      const { build } = reading;
      const told = await engine.noise({ build, settings, mainsHz: mains === "50" ? 50 : 60, microtesla: Number(room) });
      if (!isLatest()) return;
      reply = told;
      show();
    } catch (error) {
      if (isLatest()) replaceContent(answer, h("p", { class: "fault-text", role: "alert" }, (error as Error).message));
    }
  };
  const mainsRow = createChoiceRow<"50" | "60">(
    "Mains",
    [
      { value: "50", label: "50 Hz" },
      { value: "60", label: "60 Hz" },
    ],
    (value) => {
      mains = value;
      void ask();
    },
  );
  const roomRow = createChoiceRow<Room>("The room", ROOMS, (value) => {
    room = value;
    void ask();
  });
  const weightingRow = createChoiceRow<Weighting>(
    "Levels",
    [
      { value: "flat", label: "as they are", title: "20 Hz to 20 kHz, all alike" },
      { value: "A", label: "as the ear weighs them", title: "A-weighted, string and noise" },
    ],
    (value) => {
      weighting = value;
      show();
    },
  );
  mainsRow.show(mains);
  roomRow.show(room);
  weightingRow.show(weighting);
  const element = h(
    "section",
    { class: "stack noise", "aria-label": "Hum and hiss" },
    h("p", { class: "hint" }, HOW),
    h("div", { class: "noise-choices" }, mainsRow.element, roomRow.element, weightingRow.element),
    answer,
  );
  const askLater = whileShown(
    element,
    later(SETTLED_MS, () => void ask()),
  );
  store.watchAny((state) => [state.reading, state.settings], askLater);
  // Before it is in the page nothing of it is shown, and it need not wait.
  void ask();
  return element;
}
