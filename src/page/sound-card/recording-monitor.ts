import { decibels } from "../../decibels.ts";
import { h, replaceContent } from "../dom/element.ts";

const LOWEST_DB = -60;
/** From here on a converter's next step up is none. */
const CLIPPED = 0.999;

function levelRow(channel: number) {
  const meter = h("meter", {
    min: LOWEST_DB,
    max: 0,
    low: -30,
    high: -3,
    "aria-label": `Level of input ${channel + 1}`,
  });
  const text = h("span", { class: "hint" });
  let loudest = 0;
  return {
    element: h("div", { class: "row" }, `Input ${channel + 1}`, meter, text),
    show: (peak: number) => {
      loudest = Math.max(loudest, peak);
      meter.value = Math.max(LOWEST_DB, decibels(peak));
      const words = loudest >= CLIPPED ? "clipped: turn the gain down" : `loudest ${Math.round(decibels(loudest))} dB`;
      text.textContent = loudest === 0 ? "silent" : words;
    },
  };
}

/** What is seen while something is recorded: how far it has come, how loud it comes in, and a way to end it. */
export function createRecordingMonitor(told: string, stop: () => void) {
  const progress = h("progress", { max: 1, value: 0, "aria-label": "How much has been recorded" });
  const levels = h("div", { class: "stack" });
  const rows: ReturnType<typeof levelRow>[] = [];
  const button = h("button", { type: "button", onclick: stop }, "Stop");
  const element = h(
    "div",
    { class: "recording-monitor" },
    h("p", { role: "status" }, told),
    h("div", { class: "row" }, progress, button),
    levels,
  );
  const show = (peaks: readonly number[], share: number) => {
    progress.value = share;
    while (rows.length < peaks.length) {
      rows.push(levelRow(rows.length));
      replaceContent(
        levels,
        rows.map((row) => row.element),
      );
    }
    peaks.forEach((peak, channel) => {
      rows[channel]!.show(peak);
    });
  };
  return { element, button, show };
}
