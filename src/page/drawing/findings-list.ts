import type { SettingValue } from "../../build-file/settings.ts";
import type { FindingAnswer } from "../../contract/bench/bench.ts";
import { h, s } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { findingSign } from "./finding-marks.ts";

const SEVERITY_WORDS = { fault: "Fault", warning: "Warning", note: "Note" } as const;

function settingText(settings: Readonly<Record<string, SettingValue>>): string {
  return Object.entries(settings)
    .map(([name, value]) => `${name} ${value}`)
    .join(", ");
}

function whereText({ settings }: FindingAnswer): string {
  if (settings.length === 0) return "";
  return `Where: ${settings.map(settingText).join("; ")}.`;
}

function item(finding: FindingAnswer, index: number, speech: LugSpeech): HTMLElement {
  const { severity, message, remedy } = finding;
  return h(
    "li",
    { class: `finding finding-${severity}` },
    s(
      "svg",
      { viewBox: "-17 -17 34 34", width: 28, height: 28, class: `mark mark-${severity}`, "aria-hidden": "true" },
      findingSign(severity, index + 1),
    ),
    h(
      "div",
      {},
      h("p", {}, h("b", {}, `${SEVERITY_WORDS[severity]}: `), speech.say(message)),
      remedy && h("p", { class: "hint" }, speech.say(remedy)),
      h("p", { class: "hint" }, speech.say(whereText(finding))),
    ),
  );
}

/** What the reading of the wiring found, numbered as in the drawing. */
export function findingsList(findings: readonly FindingAnswer[], speech: LugSpeech): HTMLElement {
  if (findings.length === 0)
    return h("p", { class: "all-well" }, "The wiring was read lug by lug: nothing found wrong.");
  return h(
    "ol",
    { class: "findings" },
    findings.map((finding, index) => item(finding, index, speech)),
  );
}
