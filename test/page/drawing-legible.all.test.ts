import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { choosePosition, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "the drawing's texts", () => {
  const site = usePage();

  thoroughly("name the switch on a shaft and how it stands", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    expect(await page.locator("svg.guard").textContent()).toContain("push-pull: down");
    await page.getByRole("radio", { name: "up", exact: true }).first().check({ force: true });
    await expect.poll(() => page.locator("svg.guard").textContent()).toContain("push-pull: up");
    expectQuiet(visit);
  });

  it("are not faded where a part is idle, and a narrow page says that the drawing scrolls", async () => {
    const { page } = await site.stay({ width: 360 });
    await whenReady(page);
    await openScenario(page, /HSS/);
    await choosePosition(page, 1);
    await settled(page);
    // In one step, since the drawing may be replaced between two.
    const faded = await page.evaluate(() =>
      [...document.querySelectorAll("svg.guard text")]
        .filter((text) => {
          for (let at: Element | null = text; at; at = at.parentElement)
            if (Number(getComputedStyle(at).opacity) < 1) return true;
          return false;
        })
        .map((text) => text.textContent),
    );
    expect(await page.locator("svg.guard .part-dead text").count()).toBeGreaterThan(0);
    expect(faded).toEqual([]);
    expect(await page.locator(".scroll-hint").isVisible()).toBe(true);
  });

  thoroughly("leave room for the longest lug names in the list of wires", async () => {
    for (const width of [1280, 360]) {
      const { page } = await site.stay({ width });
      await whenReady(page);
      await openScenario(page, /HSS/);
      await showTab(page, "Wires");
      // On a phone the words stand under the field as well, where they wrap.
      const cut = await page.locator(".wire-list input").evaluateAll((inputs) =>
        (inputs as HTMLInputElement[])
          .filter((each) => {
            const whole = each.parentElement!.querySelector<HTMLElement>(".lug-whole")!;
            const stands = whole.getClientRects().length > 0 && whole.textContent === each.value;
            return each.scrollWidth > each.clientWidth && !stands;
          })
          .map((each) => each.value),
      );
      const wide = await page.locator(".wire-list").evaluate((list) => list.scrollWidth - list.clientWidth);
      expect(wide, `${width} px`).toBeLessThanOrEqual(0);
      expect(cut, `${width} px`).toEqual([]);
    }
  });
});
