import { showOhms } from "../../bench/meter/shown.ts";
import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

type JoinedReading = ExaminedAnswer["readings"][number];

function verdictOf({ agrees, against }: JoinedReading): (string | HTMLElement)[] {
  if (agrees) return ["agrees"];
  return [h("b", {}, "contradicts"), against.length > 0 ? ` ${against.join("; ")}` : ""];
}

/** Which readings were used, and where they and the takes cannot both be right. */
export function readingsView({ readings, contradictions }: ExaminedAnswer, speech: LugSpeech): HTMLElement | false {
  if (readings.length + contradictions.length === 0) return false;
  const rows = readings.map((reading) => [
    [speech.say(reading.title), " (", speech.say(reading.between.join(" to ")), ")"],
    showOhms(reading.shown),
    showOhms(reading.foretold),
    verdictOf(reading),
  ]);
  return h(
    "div",
    { class: "stack" },
    contradictions.length > 0 &&
      h(
        "div",
        { class: "caution" },
        h("b", {}, "Meter and takes contradict each other"),
        h(
          "ul",
          {},
          contradictions.map((text) => h("li", {}, speech.say(text))),
        ),
      ),
    readings.length > 0 &&
      plainTable(
        "Your meter's readings, weighed together with the takes",
        ["Reading", "You measured", "The best answer foretells", "With the takes"],
        rows,
      ),
  );
}
