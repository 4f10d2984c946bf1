import { rangeText } from "../../../bench/meter/shown.ts";
import type { MountingAnswer } from "../../../contract/bench/bench.ts";
import { freshId, h } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";
import type { LugSpeech } from "../../words/lug-speech.ts";
import { note, notedUnder } from "./noted.ts";

type Readings = NonNullable<MountingAnswer["closing"][number]["readings"]>;

function notedInput(key: string, attributes: { id?: string; "aria-label"?: string }): HTMLInputElement {
  const input = h("input", {
    ...attributes,
    type: "text",
    class: "short",
    value: notedUnder(key),
    autocomplete: "off",
  });
  input.addEventListener("input", () => note(key, input.value.trim()));
  return input;
}

/** Readings to be noted with their date, on paper or here. */
export function acceptanceTable(guard: string, readings: Readings, speech: LugSpeech): HTMLElement {
  const id = freshId("acceptance");
  const isOnMeter = readings.some(({ shows }) => shows !== undefined);
  const rows = readings.map((reading) => [
    speech.say(reading.label),
    rangeText(reading),
    ...(isOnMeter ? [reading.shows ?? ""] : []),
    h(
      "div",
      { class: "measured" },
      notedInput(`${guard}|${reading.label}`, {
        "aria-label": `Noted: ${speech.plain(reading.label)}`,
      }),
    ),
  ]);
  return h(
    "div",
    { class: "stack" },
    plainTable(
      "Acceptance readings",
      ["Where", "Should read", ...(isOnMeter ? ["On your meter"] : []), "You noted"],
      rows,
    ),
    h("div", { class: "field measured" }, h("label", { for: id }, "Measured on"), notedInput(`${guard}|date`, { id })),
  );
}
