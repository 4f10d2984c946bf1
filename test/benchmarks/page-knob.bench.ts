import { expect, it } from "vitest";
import { openScenario, whenReady } from "../page/actions.ts";
import { usePage } from "../page/browser.ts";
import { describeWith } from "../tools.ts";

const TURNS = 60;
const AIM_MS = 50;

/**
 * Runs in the browser: turns a knob and waits for the frame that shows the new curve. The curve is drawn within the event that
 * moves the knob, so the time runs from before the event to after the next frame has been handed over.
 */
async function timeTurns(turns: number): Promise<number[]> {
  const knob = [...document.querySelectorAll<HTMLInputElement>(".controls .dial input")].at(-1)!;
  const plot = document.querySelector(".plot")!;
  const times: number[] = [];
  for (let turn = 0; turn < turns; turn++) {
    const before = plot.getAttribute("aria-label");
    knob.value = String((turn * 3.5) % 10);
    const start = performance.now();
    knob.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    if (plot.getAttribute("aria-label") === before) throw new Error("the knob changed nothing");
    times.push(performance.now() - start);
  }
  return times;
}

describeWith("chromium", "a knob in the browser", () => {
  const site = usePage();

  it("shows the new curve", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await openScenario(page, /HSS/);
    const times = ((await page.evaluate(`(${timeTurns})(${TURNS})`)) as number[]).sort((a, b) => a - b);
    const at = (share: number) => times[Math.floor(share * (times.length - 1))]!.toFixed(1);
    console.log(`knob to curve: median ${at(0.5)} ms, 95 % within ${at(0.95)} ms, aim ${AIM_MS} ms (${TURNS} turns)`);
    expect(times).toHaveLength(TURNS);
  });
});
