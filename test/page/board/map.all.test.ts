import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { noteSounds, playedCount } from "../played.ts";
import { openCells } from "./cells-page.ts";

describeWith("chromium", "the map of sounds", () => {
  const site = usePage();

  it("shows all cells, plays by arrow keys, finds what there is twice and the fewest guards for what is liked", async () => {
    const visit = await site.visit({ before: noteSounds, width: 390 });
    const { page } = visit;
    const shelf = await openCells(page, "Map of sounds");
    const dots = shelf.locator(".sound-map .mark");
    // The one on the bench and three of the shelf, five positions each.
    await expect.poll(() => dots.count()).toBeGreaterThanOrEqual(20);
    expect(await shelf.locator(".map-panel").textContent()).toMatch(/Stress 0\.\d{3}, \w+ by Kruskal's table/);
    const twice = shelf.locator(".map-list").last();
    expect(await twice.textContent()).toContain("Usual, position 4 is Usual again, position 4");
    const adds = shelf.getByRole("row", { name: /^Usual again/ });
    expect(await adds.textContent()).toContain("nothing: the others have all its sounds");

    const map = shelf.getByRole("application");
    await map.focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => playedCount(page)).toBe(1);
    const told = shelf.locator(".dot-text");
    const first = await told.textContent();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("ArrowUp");
    expect(await told.textContent()).not.toBe("");
    await page.keyboard.press("Escape");
    expect(await shelf.locator(".dot-card").getByRole("button", { name: "Play" }).count()).toBe(1);

    await page.keyboard.press("l");
    await shelf.getByText(/^One guard has them all/).waitFor();
    expect(first).not.toBeNull();
    for (const button of await shelf.locator("#panel-map").getByRole("button").all()) {
      const box = await button.boundingBox();
      if (box) expect(box.height, (await button.textContent())!).toBeGreaterThanOrEqual(44);
    }
    await bringAxe(page);
    expect(await seriousFindings(page, "#panel-map")).toEqual([]);
    const sideways = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(sideways).toBeLessThanOrEqual(0);
    expectQuiet(visit);
  });
});
