import type { Guard } from "../../../shelf/guard.ts";
import { lineOf } from "../../../shelf/line.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { Bench } from "../../start/bench.ts";
import { drawingElement, keptDrawing } from "../list/kept-drawings.ts";

/** A guard's small drawing, drawn anew where its build file is another one. */
export function createCardPicture(bench: Bench): { readonly element: HTMLElement; show(guard: Guard): Promise<void> } {
  const element = h("div", { class: "thumb card-picture" });
  let drawn = "";
  return {
    element,
    show: async (guard) => {
      const { id, fileMark } = lineOf(guard);
      if (drawn === fileMark) return;
      drawn = fileMark;
      const svg = await keptDrawing(bench, { id, fileMark }).catch(() => "");
      replaceContent(element, drawingElement(svg));
    },
  };
}
