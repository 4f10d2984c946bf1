import { showOhms } from "../../bench/meter/shown.ts";
import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

interface JoinedReading {
  readonly title: string;
  readonly between: readonly string[];
  /** Ohms; null where it is open. */
  readonly shown: number | null;
  readonly foretold: number | null;
  readonly agrees: boolean;
  /** Titles of the takes that say otherwise. */
  readonly against: readonly string[];
}

/** What an answer says of the meter readings that were weighed together with the takes. */
export interface Joined extends Pick<ExaminedAnswer, "kind"> {
  readonly readings?: readonly JoinedReading[];
  readonly contradictions?: readonly string[];
}

function verdictOf({ agrees, against }: JoinedReading): (string | HTMLElement)[] {
  if (agrees) return ["agrees"];
  return [h("b", {}, "contradicts"), against.length > 0 ? ` ${against.join("; ")}` : ""];
}

/** Which readings were used, and where they and the takes cannot both be right. */
export function readingsView({ readings = [], contradictions = [] }: Joined, speech: LugSpeech): HTMLElement | false {
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
