import type { RecordingName } from "../../contract/measure/measure.ts";
import { h } from "../dom/element.ts";
import { createFold } from "../dom/fold.ts";
import { metalWay } from "./metal-way.ts";
import { createOneAtATime } from "./one-at-a-time.ts";
import { pickupWay } from "./pickup-way.ts";
import { createRecordingSlot, type RecordingSlot } from "./recording-slot.ts";
import { type Part, resistorWay } from "./resistor-way.ts";
import type { Way } from "./way.ts";

export type WayName = "pickup" | "metal" | Part;

export const WAYS = [
  { value: "pickup", label: "a pickup, by an exciter and a load" },
  { value: "metal", label: "what metal takes of a pickup's sound" },
  { value: "coil", label: "a coil, behind a resistor" },
  { value: "capacitor", label: "a cap" },
  { value: "resistor", label: "a resistor or a pot's track" },
  { value: "lead", label: "a lead's capacitance" },
] satisfies { value: WayName; label: string }[];

/** A way with the places of its recordings. */
export interface OpenWay extends Way {
  readonly slots: readonly RecordingSlot<RecordingName>[];
  readonly instructions: HTMLElement;
  readonly known: HTMLElement;
  readonly slotList: HTMLElement;
}

const listOf = (tag: "ol" | "ul", texts: readonly string[]) =>
  h(
    tag,
    {},
    texts.map((text) => h("li", {}, text)),
  );

const step = (title: string, content: HTMLElement) => createFold(title, h("h4", {}, title), content);

function instructions({ picture, needs, steps, budget }: Way): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    picture,
    h(
      "div",
      {},
      step("What you need", listOf("ul", needs)),
      step("Step by step", listOf("ol", steps)),
      step("How sure the answer is", h("p", {}, budget)),
    ),
  );
}

function wayOf(name: WayName): Way {
  switch (name) {
    case "pickup":
      return pickupWay();
    case "metal":
      return metalWay();
    default:
      return resistorWay(name);
  }
}

/** @param record records into the slot whose button was pressed */
export function openWay(name: WayName, record: (slot: RecordingSlot) => void): OpenWay {
  const way = wayOf(name);
  const slots = way.recordings.map((wanted) => createRecordingSlot(wanted));
  const turns = createOneAtATime(() => slots);
  for (const slot of slots) {
    slot.record.addEventListener("click", () => record(slot));
    turns.follow(slot);
  }
  turns.openNext();
  const elementsOf = (all: readonly { readonly element: HTMLElement }[]) => all.map(({ element }) => element);
  return {
    ...way,
    slots,
    instructions: instructions(way),
    known: h("div", { class: "field-row" }, elementsOf(way.fields)),
    slotList: h("div", { class: "recording-slots" }, elementsOf(slots)),
  };
}
