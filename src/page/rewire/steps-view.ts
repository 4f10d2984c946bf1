import type { RewireAnswer } from "../../contract/rewire.ts";
import { tickItem } from "../bench/ticks.ts";
import { h } from "../dom/element.ts";

type Steps = RewireAnswer["steps"];

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "3 joints to open, 4 to make; 17 wires stay as they are." */
export function effortText({ steps, kept }: Pick<RewireAnswer, "steps" | "kept">): string {
  const opened = steps.filter((step) => step.do === "open").length;
  const stay = `${counted(kept.length, "wire stays as it is", "wires stay as they are")}.`;
  return `${counted(opened, "joint")} to open, ${steps.length - opened} to make; ${stay}`;
}

/** Joints in their order, each to be ticked off. @param sheet tells the ticks of one list from those of another */
export function stepsView(sheet: string, steps: Steps): HTMLElement {
  return h(
    "ul",
    { class: "ticks" },
    steps.map(({ text }, index) => tickItem(sheet, `${index + 1}. ${text}`)),
  );
}
