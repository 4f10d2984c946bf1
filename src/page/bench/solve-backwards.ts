import { showOhms } from "../../bench/meter/shown.ts";
import type { BenchAnswer, BenchRequest } from "../../contract/bench/bench.ts";
import { h } from "../dom/element.ts";
import { formText } from "../fields/form-fields.ts";
import { createFormRun, type FormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";

/** Solving backwards looks at no build, but the service wants one; the smallest there is. */
const ANY_BUILD = {
  presolder: 1,
  parts: {
    pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.5H" } } },
    jack: { kind: "jack" },
  },
  wires: [
    ["pickup.hot", "jack.tip"],
    ["pickup.ground", "jack.sleeve"],
  ],
};

async function solve(request: BenchRequest["solve"], temperature: number): Promise<NonNullable<BenchAnswer["solved"]>> {
  return (await postJson("/api/bench", { build: ANY_BUILD, temperature, solve: request })).solved ?? {};
}

function coilForm(store: AppStore): { element: HTMLElement; run: FormRun } {
  const reading = formText("solve.coil.reading", "Jack reads, volume at 10", "", "5.18k");
  const pot = formText("solve.coil.pot", "Volume pot", "250k");
  const run = createFormRun(
    "Find the coil",
    () => [reading, pot],
    async () => {
      const { temperature } = store.state.benchOptions;
      const { coil } = await solve({ coil: { reading: reading.read(), pot: pot.read(), tolerance: 0.2 } }, temperature);
      if (!coil) return undefined;
      const within = `within ${showOhms(coil.low)} to ${showOhms(coil.high)}`;
      const at20 = temperature === 20 ? "" : `, and at 20 °C ${showOhms(coil.at20)}`;
      return h("p", {}, `At ${temperature} °C the coil has ${showOhms(coil.ohms)}, ${within}${at20}.`);
    },
  );
  return { element: h("div", { class: "field-row" }, reading.element, pot.element), run };
}

function sweepForm(store: AppStore): { element: HTMLElement; run: FormRun } {
  const atTen = formText("solve.sweep.atTen", "Jack reads, volume at 10", "", "5.86k");
  const highest = formText("solve.sweep.highest", "Highest while sweeping the volume", "", "64k");
  const run = createFormRun(
    "Find coil and pot",
    () => [atTen, highest],
    async () => {
      const { sweep } = await solve(
        { sweep: { atTen: atTen.read(), highest: highest.read() } },
        store.state.benchOptions.temperature,
      );
      return sweep && h("p", {}, `The coil has ${showOhms(sweep.coil)}, the pot ${showOhms(sweep.pot)}.`);
    },
  );
  return { element: h("div", { class: "field-row" }, atTen.element, highest.element), run };
}

/** From readings at the jack to what is inside, without opening the guitar. */
export function createSolveBackwards(store: AppStore): HTMLElement {
  const forms = [coilForm(store), sweepForm(store)];
  return h(
    "section",
    { class: "stack no-print" },
    h("h3", {}, "From the jack to the parts, without opening the guitar"),
    forms.map(({ element, run }) =>
      h("div", { class: "stack" }, element, h("div", { class: "buttons" }, run.button), run.answer),
    ),
  );
}
