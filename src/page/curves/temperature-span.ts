import { createNumberSetting } from "../bench/number-setting.ts";
import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";

/** The reference of a cap's marked value: without a span, nothing drifts. */
const MARKED_AT = 25;

function hasKnownCap({ build }: Reading): boolean {
  return Object.values(build.parts).some((part) => part.kind === "cap" && part.dielectric !== undefined);
}

/** Between which temperatures the guard is played: asked where a cap says what it is made of, for no other changes with it. */
export function createTemperatureSpan(store: AppStore): HTMLElement {
  const field = (label: string, which: 0 | 1) =>
    createNumberSetting(
      { name: "band-celsius", label, unit: "°C", value: MARKED_AT, min: -40, max: 100 },
      (celsius) => {
        const span: [number, number] = [...(store.state.bandCelsius ?? ([MARKED_AT, MARKED_AT] as const))];
        span[which] = celsius;
        store.set({ bandCelsius: span });
      },
    );
  const element = h("div", { class: "row add-row" }, field("Played at, from °C", 0), field("to °C", 1));
  store.watch(
    (state) => [state.wantsBand, state.reading],
    (wanted, reading) => {
      element.hidden = !wanted || !reading || !hasKnownCap(reading);
    },
  );
  return element;
}
