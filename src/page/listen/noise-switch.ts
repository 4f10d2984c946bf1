import { type ChoiceRow, createChoiceRow } from "../controls/choice-row.ts";
import type { NoiseHeard } from "../sound/guard-noise.ts";
import type { AppStore } from "../state/app-state.ts";

/** The room's hum, and the hiss of circuit and amplifier with it, heard beside the string. */
export function createNoiseSwitch(store: AppStore): HTMLElement {
  const row: ChoiceRow<NoiseHeard> = createChoiceRow<NoiseHeard>(
    "Hum and hiss",
    [
      { value: "off", label: "off" },
      { value: "50", label: "50 Hz", title: "hum of 50 Hz mains and hiss, at their true level to the string" },
      { value: "60", label: "60 Hz", title: "hum of 60 Hz mains and hiss, at their true level to the string" },
    ],
    (noise) => store.set({ noise }),
  );
  store.watch((state) => [state.noise], row.show);
  return row.element;
}
