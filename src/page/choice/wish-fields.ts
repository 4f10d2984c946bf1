import type { WishRequest } from "../../contract/search.ts";
import { h } from "../dom/element.ts";
import { type FormField, formChoice, formText } from "../fields/form-fields.ts";
import type { Option } from "../fields/plain-fields.ts";
import type { AppState } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { Reading } from "../state/reading.ts";

const WISHES = [
  { value: "peak", label: "the peak stands near…" },
  { value: "tone-halfway", label: "tone at 5 sounds halfway" },
  { value: "keeps-treble", label: "turned down, it keeps its treble" },
  { value: "as-bright", label: "this position is as bright as…" },
  { value: "like", label: "as close as possible to guard B" },
] satisfies Option<WishRequest["kind"]>[];

export interface WishFields {
  readonly element: HTMLElement;
  readonly fields: readonly FormField[];
  /** @throws Error in plain words where something needed is missing */
  read(state: AppState): WishRequest;
}

function positionsAs(reading: Reading, settings: AppState["settings"], text: string) {
  const { main } = reading.controls;
  const positions = text.split(/[\s,;]+/).filter(Boolean);
  if (!main || positions.length === 0) throw new Error("Name the positions to compare with, such as 3, 5.");
  return positions.map((position) => fitSettings(reading, { ...settings, [main.name]: position }));
}

/** What is wished for, in the setting on the bench. */
export function createWishFields(): WishFields {
  const kind = formChoice("wish.kind", "Wish", WISHES);
  const frequency = formText("wish.frequency", "Peak near", "4kHz");
  const dial = formText("wish.dial", "Volume turned down to", "5");
  const positions = formText("wish.as", "Positions", "3, 5");
  const showFor: Partial<Record<WishRequest["kind"], FormField>> = {
    peak: frequency,
    "keeps-treble": dial,
    "as-bright": positions,
  };
  const show = () => {
    for (const [name, field] of Object.entries(showFor)) field.element.hidden = name !== kind.read();
  };
  kind.element.addEventListener("change", show);
  show();
  return {
    element: h("div", { class: "field-row" }, kind.element, frequency.element, dial.element, positions.element),
    fields: [kind, frequency, dial, positions],
    read: ({ reading, other, settings }) => {
      const wished = kind.read();
      switch (wished) {
        case "peak":
          return { kind: wished, settings, frequency: frequency.read() };
        case "tone-halfway":
          return { kind: wished, settings };
        case "keeps-treble":
          return { kind: wished, settings, dial: Number(dial.read()) };
        case "as-bright":
          return { kind: wished, settings, as: positionsAs(reading!, settings, positions.read()) };
        case "like":
          if (!other) throw new Error("Keep a guard as B first, under A against B.");
          return { kind: wished, settings, build: other.source, like: fitSettings(other, settings) };
      }
    },
  };
}
