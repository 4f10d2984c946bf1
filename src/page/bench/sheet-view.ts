import type { SheetAnswer } from "../../contract/bench/bench.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { Schedule, type SheetStage as Stage } from "../drawing/joint/schedule.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { checkKey, jointKey } from "./joint/joint-key.ts";
import { tickItem } from "./ticks.ts";

const millimetres = (metres: number) => `${Math.round(metres * 1000)} mm`;

function cutTable(cuts: SheetAnswer["cuts"], speech: LugSpeech): HTMLElement {
  const rows = cuts.map(({ wire, from, to, onTo, colour, kind, cut, strips, ready }) => [
    String(wire),
    kind === colour ? kind : `${colour}, ${kind}`,
    millimetres(cut),
    [...new Set(strips.map(millimetres))].join(" and "),
    speech.say(from),
    speech.say([to, ...onTo].join(", on to ")),
    ready,
  ]);
  return plainTable("Wires to cut", ["No.", "Wire", "Cut", "Bare", "From", "To", "Ends"], rows);
}

function reelTable(reels: SheetAnswer["reels"]): HTMLElement {
  const enough = { true: "enough", false: "too short" } as const;
  const rows = reels.map(({ colour, kind, pieces, metres, withSpare, has, suffices }) => [
    kind === colour ? kind : `${colour}, ${kind}`,
    String(pieces),
    `${metres} m`,
    `${withSpare} m`,
    has === null ? "–" : `${has} m`,
    suffices === null ? "–" : enough[`${suffices}`],
  ]);
  const heads = ["Wire", "Pieces", "Together", "With one mistake to spare", "On the reel", ""];
  return plainTable("Wire by the reel", heads, rows);
}

interface Sheet {
  readonly title: string;
  readonly speech: LugSpeech;
  readonly schedule: Schedule;
}

/** @param key what its tick is kept by; the text, where left out */
function step({ title, speech }: Sheet, text: string, key?: string): HTMLElement {
  return tickItem(title, text, speech.say(text), key);
}

/** Where the stage's picture comes. */
function picturePlace({ title, joints }: Stage, { speech }: Sheet): HTMLElement {
  const label = `What is soldered in this stage: ${speech.plain(title)}`;
  const [first, last] = [joints[0]!.number, joints.at(-1)!.number];
  return h("div", { class: "stage-picture", "data-first": first, "data-last": last, "data-label": label });
}

function stageView(sheet: Sheet, stage: Stage, index: number): HTMLElement {
  return h(
    "section",
    { class: "stage-sheet" },
    h("h4", {}, `${index + 1}. ${stage.title}`),
    picturePlace(stage, sheet),
    h(
      "ul",
      { class: "ticks" },
      stage.joints.map((joint) => {
        const { number, text, heat } = joint;
        // A lug takes a moment, and everybody knows; a case or the claw is what goes wrong.
        const isBig = heat.heated === "case" || heat.heated === "claw";
        return step(sheet, `Joint ${number}. ${text}${isBig ? ` ${heat.text}` : ""}`, jointKey(sheet.schedule, joint));
      }),
    ),
    stage.checks.length > 0 && h("p", { class: "hint" }, "Then check"),
    h(
      "ul",
      { class: "ticks" },
      stage.checks.map(({ text }) => step(sheet, text, checkKey(sheet.schedule, stage, text))),
    ),
  );
}

function sittingView(sheet: Sheet, sitting: SheetAnswer["sittings"][number], first: number): HTMLElement {
  return h(
    "section",
    { class: "stack" },
    h("h3", {}, sitting.title),
    sitting.stages.map((stage, index) => stageView(sheet, stage, first + index)),
    h("p", { class: "hint" }, "Then measure the lines of the meter table for what is soldered so far."),
  );
}

/** The build sheet: preparations, wires to cut, joints in order with their checks. */
export function sheetView(title: string, answer: SheetAnswer, speech: LugSpeech): HTMLElement {
  const { preparations, cuts, reels, sittings, weighed, notes } = answer;
  const sheet = { title, speech, schedule: new Schedule(answer) };
  const before = sittings.map((_, index) => sittings.slice(0, index).flatMap(({ stages }) => stages).length);
  return h(
    "div",
    { class: "stack" },
    h("h3", {}, "Build sheet"),
    h(
      "ul",
      { class: "ticks" },
      preparations.map((text) => step(sheet, text)),
    ),
    cutTable(cuts, speech),
    reelTable(reels),
    h("div", { class: "stage-legend" }),
    weighed.moved.map(({ text }) => h("p", { class: "hint" }, speech.say(text))),
    sittings.map((sitting, index) => sittingView(sheet, sitting, before[index]!)),
    notes.map((text) => h("p", { class: "hint" }, speech.say(text))),
  );
}
