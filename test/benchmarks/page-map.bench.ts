import { expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { CellDesk } from "../../src/page/cells/cell-desk.ts";
import { newGuard } from "../../src/shelf/new-guard.ts";
import { buildText } from "../../src/shelf/packed.ts";
import { drawerOf } from "../fixtures/guard-drawer.ts";
import { showTab, whenOpen } from "../page/actions.ts";
import { usePage } from "../page/browser.ts";
import { fill, openShelf } from "../page/shelf/shelf-page.ts";
import { describeWith } from "../tools.ts";
import { median, report } from "./stopwatch.ts";

const RUNS = 5;
/** Of twenty cells each. */
const GUARDS = 50;

it("a map of a thousand cells, without a browser", async () => {
  const builds = drawerOf(GUARDS).map((build) => readBuild(build));
  const times: { readonly sounds: number; readonly all: number; readonly equals: number }[] = [];
  for (let run = 0; run < RUNS; run++) {
    const desk = new CellDesk();
    const start = performance.now();
    let sounds = 0;
    const { cells } = await desk.map({ builds, tones: "turned", playing: {} }, (share) => {
      if (share <= 0.5) sounds = performance.now() - start;
    });
    const all = performance.now() - start;
    desk.equals("none");
    times.push({ sounds, all, equals: performance.now() - start - all });
    expect(cells).toHaveLength(20 * GUARDS);
  }
  report(`a map of ${20 * GUARDS} cells, medians of ${RUNS}, ms`, {
    "their sounds": median(times.map(({ sounds }) => sounds)),
    "the map with them": median(times.map(({ all }) => all)),
    "what passes for what": median(times.map(({ equals }) => equals)),
  });
});

describeWith("chromium", "the map in the browser", () => {
  const site = usePage();

  it("of a thousand cells, from the choice of tones to the dots, by the page's worker", async () => {
    const times: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const { page } = await site.visit({ ownWindow: true });
      await whenOpen(page);
      const shelf = await openShelf(page);
      const at = new Date("2026-03-01T18:30:00.000Z");
      const guards = drawerOf(GUARDS).map((build, index) =>
        newGuard({ name: `Guard ${index + 1}`, file: buildText(build as never) }, at),
      );
      await fill(shelf, guards);
      await showTab(page, "Map of sounds");
      await shelf.locator(".sound-map .mark").first().waitFor();
      // All of them, the one on the bench left out.
      for (const tick of await shelf.locator(".map-guards input").all()) {
        const isOnBench = (await tick.getAttribute("data-guard")) === "bench";
        await tick.setChecked(!isOnBench);
      }
      await expect.poll(() => shelf.locator(".sound-map .mark").count()).toBe(5 * GUARDS);
      // Read and drawn once, every guard's sounds are to be worked out for three more stops of the tone.
      const milliseconds = await page.evaluate(
        (count) =>
          new Promise<number>((resolve) => {
            const picture = document.querySelector(".sound-map")!;
            const select = [...document.querySelectorAll<HTMLSelectElement>(".map-panel select")].find((each) =>
              [...each.options].some(({ value }) => value === "turned"),
            )!;
            const start = performance.now();
            new MutationObserver(() => {
              if (picture.childElementCount === count) resolve(performance.now() - start);
            }).observe(picture, { childList: true });
            select.value = "turned";
            select.dispatchEvent(new Event("change"));
          }),
        20 * GUARDS,
      );
      times.push(milliseconds);
    }
    report("a map of a thousand cells in the browser", {
      "median, ms": median(times),
      "longest, ms": Math.max(...times),
    });
    expect(times).toHaveLength(RUNS);
  });
});
