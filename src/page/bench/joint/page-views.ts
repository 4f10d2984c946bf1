import { rangeText } from "../../../bench/meter/shown.ts";
import type { SheetAnswer } from "../../../contract/bench/bench.ts";
import { capitalised } from "../../../english.ts";
import { type Child, h, s } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";
import { drawPicture } from "../../drawing/joint/draw-picture.ts";
import { picturing } from "../../drawing/joint/picturing.ts";
import { sceneOf } from "../../drawing/joint/scene.ts";
import type { SceneInput } from "../../drawing/joint/scene-lines.ts";
import type { SheetJoint } from "../../drawing/joint/schedule.ts";
import type { Reading } from "../../state/reading.ts";
import { type LugSpeech, speechOf } from "../../words/lug-speech.ts";
import { createCautions } from "../cautions.ts";
import { tickItem } from "../ticks.ts";
import type { BenchPage, ChecksPage, JointPage, PreparationsPage, ReadingsPage } from "./bench-pages.ts";
import { checkKey } from "./joint-key.ts";
import { type EndWords, jointWords } from "./joint-words.ts";
import { pictureLegend, wayLine } from "./picture-legend.ts";

/** A sheet with all that its pages are made from. */
export interface Job {
  readonly reading: Reading;
  readonly sheet: SheetAnswer;
  /** What the coils are taken to have while they are read. */
  readonly celsius: number;
  readonly input: SceneInput;
  readonly speech: LugSpeech;
  /** What its ticks are kept under. */
  readonly title: string;
}

export function jobOf(reading: Reading, sheet: SheetAnswer, celsius: number): Job {
  const input = picturing(reading.build, sheet);
  return { reading, sheet, celsius, input, speech: speechOf(reading), title: reading.source.title ?? "" };
}

function sideSample(isGround: boolean): Child[] {
  return [
    s("svg", { viewBox: "0 -6 44 12", width: 36, height: 10, "aria-hidden": "true" }, wayLine(isGround)),
    h("small", { class: "side" }, isGround ? "ground" : "hot"),
  ];
}

function endItem({ letter, text, waits }: EndWords, speech: LugSpeech): HTMLElement {
  return h(
    "li",
    {},
    h("b", { class: "letter" }, letter),
    h(
      "div",
      {},
      h("span", {}, speech.say(capitalised(text))),
      waits.map((wait) => h("p", { class: "waits" }, speech.say(wait))),
    ),
  );
}

function placeWords({ kind, at }: SheetJoint, speech: LugSpeech): Child {
  return kind === "splice" ? "splice" : speech.lug(at);
}

function jointView(job: Job, { joint, stage }: JointPage): HTMLElement[] {
  const { input, speech, reading } = job;
  const { number } = joint;
  const words = jointWords(input.schedule, job.sheet, joint);
  // All that meets in a joint is of one net.
  const isGround = input.isGround(joint.at);
  const [only] = words.ends.length === 1 ? words.ends : [];
  const scene = sceneOf(input, { first: number, last: number }, "joint");
  return [
    h(
      "div",
      { class: "joint-picture-frame" },
      drawPicture(reading.build, input, scene, `Joint ${number}, at ${speech.words.of(joint.at)}`),
      h("details", { class: "what-lines-mean" }, h("summary", {}, "What the lines mean"), pictureLegend()),
    ),
    h(
      "div",
      { class: "joint-words" },
      h("p", { class: "hint" }, speech.say(stage.title), " ", sideSample(isGround)),
      h("h2", { tabindex: -1 }, `Joint ${number}: `, placeWords(joint, speech)),
      !only &&
        h(
          "ul",
          { class: "joint-ends" },
          words.ends.map((end) => endItem(end, speech)),
        ),
      h("p", { class: "joint-action" }, speech.say(words.action)),
      only?.waits.map((wait) => h("p", { class: "waits" }, speech.say(wait))),
      h("p", { class: "joint-heat" }, h("b", {}, "Iron. "), joint.heat.text),
    ),
  ];
}

function checksView({ input, speech, title }: Job, { stage }: ChecksPage): HTMLElement[] {
  return [
    h("h2", { tabindex: -1 }, "Check before going on: ", speech.say(stage.title)),
    h(
      "ul",
      { class: "ticks" },
      stage.checks.map(({ text }) => tickItem(title, text, speech.say(text), checkKey(input.schedule, stage, text))),
    ),
  ];
}

/** The first of those that read alike between the same lugs. */
function eachOnce(readings: ReadingsPage["sitting"]["readings"]): typeof readings {
  const seen = new Set<string>();
  return readings.filter((reading) => {
    const key = `${reading.between.join(" ")} ${rangeText(reading)}`;
    return !seen.has(key) && seen.add(key);
  });
}

function readingsView({ speech, celsius }: Job, { sitting }: ReadingsPage): HTMLElement[] {
  const rows = eachOnce(sitting.readings).map((reading) => [
    [speech.say(reading.label), " ", h("small", { class: "lug-code" }, reading.between.join(" – "))],
    rangeText(reading),
  ]);
  return [
    h("h2", { tabindex: -1 }, `Measure: ${sitting.title}`),
    h(
      "p",
      {},
      `Nothing plugged in, coils at ${celsius} °C. Each sort of reading stands here once; all settings are under Measure.`,
    ),
    plainTable("What the meter must read now", ["Where, probes on", "Should read"], rows),
  ];
}

function preparationsView({ speech, title }: Job, { texts }: PreparationsPage): HTMLElement[] {
  return [
    h("h2", { tabindex: -1 }, "Before the iron is hot"),
    h(
      "ul",
      { class: "ticks" },
      texts.map((text) => tickItem(title, text, speech.say(text))),
    ),
  ];
}

/** What a page shows; its heading takes the focus. */
export function pageView(job: Job, page: BenchPage): HTMLElement[] {
  switch (page.kind) {
    case "cautions":
      return [h("h2", { tabindex: -1 }, "First of all"), createCautions(true)];
    case "preparations":
      return preparationsView(job, page);
    case "joint":
      return jointView(job, page);
    case "checks":
      return checksView(job, page);
    case "readings":
      return readingsView(job, page);
  }
}
