import { summarize } from "../../build-file/setting-label.ts";
import { type Controls, parseSettings } from "../../build-file/settings.ts";
import type { NextCheckAnswer } from "../../contract/diagnose.ts";
import { h } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { rangeText } from "./ohms.ts";

type FaultSets = NextCheckAnswer["outcomes"][number]["faults"];

const SHOWN_FAULTS = 3;

/** "coil open (neck.hot; neck.ground)"; "nothing wrong" where nothing is. */
function faultWords({ kind, lugs }: FaultSets[number][number]): string {
  if (kind === "none") return "nothing wrong";
  return `${kind.replaceAll("-", " ")} (${lugs.join("; ")})`;
}

function pointsTo(faults: FaultSets): string {
  const each = [...new Set(faults.map((together) => together.map(faultWords).join(" and ")))];
  const rest = each.length - SHOWN_FAULTS;
  return `${each.slice(0, SHOWN_FAULTS).join(", or ")}${rest > 0 ? `, or ${rest} more` : ""}`;
}

function howText(next: NextCheckAnswer, controls: Controls): string {
  if (next.kind === "try") return next.instruction;
  if (next.kind === "listen") return `Listen next: ${next.label}.`;
  const setting = summarize(controls, parseSettings(controls, next.settings)).label;
  const sweep = next.sweep ? ` Turn ${next.sweep} through its whole travel and take the highest reading.` : "";
  return `Measure next from ${next.between.join(" to ")}, nothing plugged in, with ${setting}.${sweep}`;
}

/** The next check: how to set the guard and where to probe, and which explanation each outcome points to. */
export function nextCheckView(next: NextCheckAnswer, controls: Controls, speech: LugSpeech): HTMLElement {
  const outcomes =
    next.kind === "try"
      ? next.outcomes.map(({ helped, faults }) => `${helped ? "helps" : "does not help"} → ${pointsTo(faults)}`)
      : next.kind === "meter"
        ? next.outcomes.map(({ low, high, faults }) => `${rangeText({ low, high })} → ${pointsTo(faults)}`)
        : next.outcomes.map(({ heard, faults }) => `${heard ? "heard" : "not heard"} → ${pointsTo(faults)}`);
  return h(
    "div",
    { class: "verdict" },
    h("p", {}, speech.say(howText(next, controls))),
    h(
      "ul",
      {},
      outcomes.map((text) => h("li", {}, speech.say(text))),
    ),
  );
}
