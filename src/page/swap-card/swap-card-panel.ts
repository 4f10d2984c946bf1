import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { SwapCardRequest } from "../../contract/bench/swap-card.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { createCautions } from "../bench/cautions.ts";
import { meterInUse, meterTold } from "../bench/meter/kept-meter.ts";
import { h } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { Bench } from "../start/bench.ts";
import { toReading } from "../start/open-build.ts";
import { type ChosenGuard, createGuardChoice } from "./guard-choice.ts";
import { keptHeights, keptReadings } from "./kept-of.ts";
import { swapCardView } from "./swap-card-view.ts";

const INTRO =
  "One loaded guard comes out, another goes in: what comes off and goes on, what to readjust and to measure, and what to tell the player.";

const LETTING_GO = [
  { value: "solder", label: "soldered" },
  { value: "plug", label: "with a plug" },
  { value: "along", label: "comes along with the guard" },
] as const;

/** None of a guard that cannot be read, of which the service says why. */
async function pickupsOf(bench: Bench, { build }: ChosenGuard): Promise<string[]> {
  const reading = await toReading(bench, build);
  return reading ? partsOfKind(reading.build, "pickup").map(([name]) => name) : [];
}

async function labelsOf(bench: Bench, { build }: ChosenGuard): Promise<string[]> {
  const reading = await toReading(bench, build);
  if (!reading) return [];
  const { temperature } = bench.store.state.benchOptions;
  const asked = { build: reading.build, temperature, meter: undefined, drawer: [], noted: {}, heights: {} };
  const { readings } = await benchEngineOf(bench.store).passport(asked);
  return readings.map(({ label }) => label);
}

/** The card of two guards, to be read on the bench or printed. */
export function createSwapCardPanel(bench: Bench): HTMLElement {
  bringStyle("tools.css");
  bringStyle("wanted.css");
  const { store } = bench;
  const out = createGuardChoice(bench, "Comes out", ["b", "bench"]);
  const into = createGuardChoice(bench, "Goes in", ["bench"]);
  const guitar = formText("guitar", "Which guitar");
  const date = formText("date", "Date", new Date().toISOString().slice(0, 10), "2026-03-01");
  const jack = formChoice("how.jack", "The jack is", LETTING_GO);
  const claw = formChoice("how.claw", "The spring claw's wire is", LETTING_GO.slice(0, 2));
  const fields = [guitar, date, jack, claw];
  const run = createFormRun(
    "Write the card",
    () => fields,
    async () => {
      const [from, to] = [await out.read(), await into.read()];
      const meter = meterInUse(store);
      const body: SwapCardRequest = {
        out: from.build,
        in: to.build,
        how: { jack: jack.read(), claw: claw.read(), shield: claw.read(), other: claw.read() },
        temperature: store.state.benchOptions.temperature,
        heights: keptHeights(to, await pickupsOf(bench, to)),
        heightsOut: keptHeights(from, await pickupsOf(bench, from)),
        noted: keptReadings(to, await labelsOf(bench, to)),
        ...(meter ? { meter: meterTold(meter) } : {}),
        ...(guitar.read() ? { guitar: guitar.read() } : {}),
        ...(date.read() ? { date: date.read() } : {}),
      };
      const card = swapCardView(await postJson("/api/swap-card", body));
      const print_ = h("button", { type: "button", onclick: () => print() }, "Print the card");
      return h("div", { class: "stack" }, h("div", { class: "buttons no-print" }, print_), card);
    },
  );
  return h(
    "div",
    { class: "stack swap-panel" },
    h(
      "div",
      { class: "stack no-print" },
      h("h3", {}, "Swap card"),
      h("p", {}, INTRO),
      createCautions(false),
      h("div", { class: "field-row swap-guards" }, out.element, into.element),
      h("div", { class: "field-row" }, jack.element, claw.element, guitar.element, date.element),
      h(
        "p",
        { class: "hint" },
        "Guards come from the bench, from what is kept as B, and from the shelf. Heights and readings are those that were noted on the passport under the guard's title.",
      ),
      h("div", { class: "buttons" }, run.button),
    ),
    run.answer,
  );
}
