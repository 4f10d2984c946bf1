import { FAULT_SHARES, type FaultKind } from "../../bench/faults/priors/fault-shares.ts";
import { rangeText } from "../../bench/meter/shown.ts";
import type { NextCheckAnswer } from "../../contract/diagnose.ts";
import { h } from "../dom/element.ts";
import { createLazy } from "../dom/lazy.ts";
import type { Reading } from "../state/reading.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

type FaultSets = NextCheckAnswer["outcomes"][number]["faults"];

const SHOWN_FAULTS = 2;
/** What less of the belief expects is not worth a line. */
const WORTH_TELLING = 0.02;
/** So many outcomes stand there, the likeliest first; what is left is counted. */
const SHOWN_OUTCOMES = 4;

/** "broken coil (neck.hot; neck.ground)"; "nothing wrong" where nothing is. */
function faultWords({ kind, lugs }: FaultSets[number][number]): string {
  if (!(kind in FAULT_SHARES)) return "nothing wrong";
  return `${FAULT_SHARES[kind as FaultKind].words[0]}${lugs.length > 0 ? ` (${lugs.join("; ")})` : ""}`;
}

function pointsTo(faults: FaultSets): string {
  const each = [...new Set(faults.map((together) => together.map(faultWords).join(" and ")))];
  const rest = each.length - SHOWN_FAULTS;
  return `${each.slice(0, SHOWN_FAULTS).join(", or ")}${rest > 0 ? `, or ${rest} more` : ""}`;
}

/** How an answer is put to the person. */
export interface HowSaid {
  readonly speech: LugSpeech;
  /** What their meter shows of what is open; empty where they did not say which it is. */
  readonly over: string;
}

function outcomesOf(next: NextCheckAnswer, over: string): string[] {
  switch (next.kind) {
    case "meter":
      return [...next.outcomes]
        .sort((a, b) => b.share - a.share)
        .filter(({ share }, index) => index < 2 || share >= WORTH_TELLING)
        .map(({ low, high, faults }) => `${rangeText({ low, high }, over)} → ${pointsTo(faults)}`);
    case "listen":
      return next.outcomes.map(({ heard, faults }) => `${heard ? "heard" : "not heard"} → ${pointsTo(faults)}`);
    case "try":
      return next.outcomes.map(({ helped, faults }) => `${helped ? "helps" : "does not help"} → ${pointsTo(faults)}`);
  }
}

/** The drawing's code is loaded with the answer: what waited to be scrolled to would be printed as still loading. */
function picture(reading: Reading, between: readonly [string, string]): HTMLElement {
  const lazy = createLazy(async () => (await import("../drawing/probe-picture.ts")).probePicture(reading, between));
  lazy.open();
  return lazy.element;
}

/** The next thing to do: what it may show, which explanation each outcome points to, and where its probes go. */
export function nextCheckView(next: NextCheckAnswer, reading: Reading, { speech, over }: HowSaid): HTMLElement {
  const outcomes = outcomesOf(next, over);
  const rest = outcomes.length - SHOWN_OUTCOMES;
  return h(
    "div",
    { class: "next-check stack" },
    h("p", {}, h("b", {}, speech.say(next.instruction))),
    next.kind === "meter" && picture(reading, next.between),
    next.kind === "try" &&
      h(
        "ul",
        { class: "caution" },
        next.cautions.map((text) => h("li", {}, text)),
      ),
    h(
      "details",
      {},
      h("summary", {}, "What each outcome would mean"),
      h(
        "ul",
        {},
        outcomes.slice(0, SHOWN_OUTCOMES).map((text) => h("li", {}, speech.say(text))),
        rest > 0 && h("li", {}, `${rest} other outcome${rest === 1 ? "" : "s"}, less likely`),
      ),
    ),
  );
}
