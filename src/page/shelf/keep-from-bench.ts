import { replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { Bench } from "../start/bench.ts";
import { createFaultNotice } from "./fault-notice.ts";
import { keepGuard } from "./keep-guard.ts";
import { ShelfFault } from "./shelf.ts";

/** Keeps the guard on the bench. @param place where what could not be kept is told @returns what to say */
export async function keepFromBench(bench: Bench, place: HTMLElement): Promise<string> {
  replaceContent(place);
  try {
    return (await keepGuard(bench)).told;
  } catch (error) {
    if (!(error instanceof ShelfFault)) throw error;
    bringStyle("shelf.css");
    const notice = createFaultNotice();
    replaceContent(place, notice.element);
    notice.tell(error);
    return "";
  }
}
