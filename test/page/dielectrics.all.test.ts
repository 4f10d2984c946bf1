import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, settled, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "whether a cap's make matters", () => {
  const site = usePage();

  async function ask() {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await showTab(page, "Parts");
    const card = page.locator('article:has([data-path="parts.cap1.capacitance"])');
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await card.getByRole("button", { name: "Does the make matter?" }).click();
    await card.locator(".verdict").waitFor();
    return { visit, page, card, asked };
  }

  it("is answered at the cap, first in a sentence, without asking the service", async () => {
    const { visit, card, asked } = await ask();
    expect(await card.locator(".verdict").textContent()).toMatch(
      /^(No|Hardly): at the same measured value nobody hears/,
    );
    expect(await card.getByRole("row", { name: /^polypropylene film/ }).textContent()).toContain("not heard");
    expect(asked.filter((path) => path.startsWith("/api/"))).toEqual([]);
    expectQuiet(visit);
  });

  it("is heard: a guard with such a cap is kept as B and compared", async () => {
    const { visit, page, card } = await ask();
    await card.getByRole("button", { name: /^Keep the guard with Z5U ceramic, −20 % off its mark, as B$/ }).click();
    await settled(page);
    await showTab(page, "A against B");
    const table = page.getByRole("table", { name: "What differs" });
    await table.waitFor();
    expect(await table.textContent()).toContain("17.6n");
    expect(await table.textContent()).toMatch(/made of.*Z5U/);
    expectQuiet(visit);
  });

  it("makes the band of tolerances ask between which temperatures the guard is played, and no other guard", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    const coldest = page.getByLabel("Played at, from °C");
    const temperatures: unknown[] = [];
    page.on("request", (asked) => {
      if (asked.url().endsWith("/api/tolerance")) temperatures.push(asked.postDataJSON().temperature);
    });
    await page.getByLabel(/^What part tolerances leave open/).check();
    await expect.poll(() => temperatures.length).toBeGreaterThan(0);
    expect(temperatures).not.toContainEqual(expect.anything());
    expect(await coldest.isVisible()).toBe(false);
    await showTab(page, "Parts");
    await page.locator('[data-path="parts.cap1.dielectric"]').selectOption("ceramic-z5u");
    await coldest.waitFor();
    await coldest.fill("5");
    await expect.poll(() => temperatures.at(-1)).toEqual([5, 25]);
    expectQuiet(visit);
  });

  it("is asked again of a guard that is another by then, and fits a phone", async () => {
    const { page, card } = await ask();
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await card.evaluate((each) => each.scrollWidth - each.clientWidth)).toBeLessThanOrEqual(1);
    const cap = page.locator('[data-path="parts.cap1.capacitance"]');
    await cap.fill("47n");
    await cap.press("Enter");
    await card.locator(".verdict").waitFor({ state: "detached" });
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});
