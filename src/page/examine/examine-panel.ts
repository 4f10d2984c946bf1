import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { formChoice } from "../fields/form-fields.ts";
import { createSoundCardCautions } from "../sound-card/sound-card-cautions.ts";
import type { AppStore } from "../state/app-state.ts";
import { createJackWay } from "./jack-way.ts";
import type { ReadBeside } from "./read-beside.ts";
import { createTapWay } from "./tap-way.ts";

const WAYS = [
  { value: "taps", label: "by tapping the poles: what sounds" },
  { value: "jack", label: "through its jack: every part and joint" },
] as const;

const PRIVACY = "Recordings go to the service to be worked out, and nothing of them is kept there.";

/** Holding a soldered guard to its drawing, by recordings. */
export function createExaminePanel(store: AppStore, readBeside: ReadBeside): HTMLElement {
  bringStyle("tools.css");
  const choice = formChoice("way", "Examine it", WAYS);
  const select = choice.element.querySelector("select")!;
  const lock = (isBusy: boolean) => {
    select.disabled = isBusy;
  };
  const holder = h("div", {});
  const taps = createTapWay(store, holder, lock);
  let jack: HTMLElement | undefined;
  const wayOf = (name: "taps" | "jack") => {
    if (name === "taps") return taps.element;
    jack ??= createJackWay(store, holder, { measured: readBeside, taps: taps.take }, lock);
    return jack;
  };
  const show = () => replaceContent(holder, wayOf(choice.read()));
  choice.element.addEventListener("change", show);
  show();
  return h(
    "section",
    { class: "stack sound-card", "aria-label": "Examining the finished guard" },
    createSoundCardCautions(),
    choice.element,
    holder,
    h("p", { class: "hint" }, PRIVACY),
  );
}
