import type { Step } from "../../build-file/rewire/steps.ts";
import { tickItem } from "../bench/ticks.ts";
import { h } from "../dom/element.ts";
import type { RewiringTold } from "../engine/rewire-told.ts";
import type { Pointed } from "./pointed.ts";
import { stepSign } from "./signs.ts";

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "3 joints to open, 4 to make; 17 wires stay as they are." */
export function effortText({ steps, kept }: Pick<RewiringTold, "steps" | "kept">): string {
  const opened = steps.filter((step) => step.do === "open").length;
  const stay = `${counted(kept.length, "wire stays as it is", "wires stay as they are")}.`;
  return `${counted(opened, "joint")} to open, ${steps.length - opened} to make; ${stay}`;
}

export interface StepList {
  readonly element: HTMLElement;
  light(step: number | undefined): void;
  /** Brings a step into view, its box in the focus. */
  show(step: number): void;
}

interface StepListener {
  /** A step was pointed at, or reached by keys. */
  bring(step: number): void;
  ticked(step: number, isDone: boolean): void;
}

/** Joints in their order, each to be ticked off. @param sheet tells the ticks of one list from those of another */
export function createStepList(
  sheet: string,
  steps: readonly Step[],
  pointed: Pointed,
  { bring, ticked }: StepListener,
): StepList {
  const items = steps.map((step, index) => {
    const text = `${index + 1}. ${step.text}`;
    const code = h("small", { class: "lug-code" }, step.at);
    return tickItem(sheet, text, [stepSign(step.do), " ", text, " ", code]);
  });
  const boxes = items.map((item) => item.querySelector("input")!);
  for (const [step, item] of items.entries()) {
    const box = boxes[step]!;
    pointed.listen(item, box, step);
    item.addEventListener("pointerenter", () => bring(step));
    box.addEventListener("focus", () => bring(step));
    box.addEventListener("change", () => ticked(step, box.checked));
    ticked(step, box.checked);
  }
  return {
    element: h("ul", { class: "ticks steps" }, items),
    light: (lit) => {
      for (const [step, item] of items.entries()) item.classList.toggle("lit", step === lit);
    },
    show: (step) => {
      boxes[step]!.focus({ preventScroll: true });
      items[step]!.scrollIntoView({ block: "nearest" });
    },
  };
}
