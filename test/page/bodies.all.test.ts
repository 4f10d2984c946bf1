import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { draftOf, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

interface Drawn {
  readonly parts: Readonly<Record<string, { readonly body?: string; readonly place?: { readonly turn?: number } }>>;
}

describeWith("chromium", "a part's body", () => {
  const site = usePage();

  for (const width of [1280, 360])
    it(`is chosen by its picture, drawn at once and taken back by a step, at ${width} px`, async () => {
      const visit = await site.stay({ width });
      const { page } = visit;
      await whenReady(page);
      await openScenario(page, /HSS/);
      const source = async () => (await draftOf(page)).source as Drawn;
      const before = JSON.stringify(await source());
      const spots = () =>
        page
          .locator('svg.guard [data-lug^="lever."] circle')
          .evaluateAll((all) => all.map((each) => `${each.getAttribute("cx")} ${each.getAttribute("cy")}`).join());
      const drawn = await spots();
      await showTab(page, "Parts");
      const card = page.locator(".part-card", { hasText: "· lever" });
      await card.locator("details").evaluate((details) => details.setAttribute("open", ""));
      const picture = card.locator(".body-option", { hasText: "eight lugs in line, alike" });
      await picture.locator("svg.body-picture").waitFor();
      expect(await card.locator(".body-option").count()).toBe(3);
      expect(await picture.locator(".lug").count()).toBe(8);
      expect(await card.locator(".body-picker").textContent()).toMatch(
        /from memory, no source.*Check yours with the meter/,
      );
      await picture.locator("input").check();
      await expect.poll(async () => (await source()).parts.lever!.body).toBe("in-line-alike");
      await settled(page);
      expect(await spots()).not.toBe(drawn);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      // Of another type, it gives up a body that it cannot have.
      await card.getByLabel("Type").selectOption("lever-5-four-pole");
      await expect.poll(async () => "body" in (await source()).parts.lever!).toBe(false);
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await page.keyboard.press("Control+z");
      await page.keyboard.press("Control+z");
      await expect.poll(async () => JSON.stringify(await source())).toBe(before);
      await expect.poll(spots).toBe(drawn);
      expectQuiet(visit);
    });

  it("is turned as the bench advises, by one press and back by a step", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    const source = async () => (await draftOf(page)).source as Drawn;
    const before = JSON.stringify(await source());
    const advice = page.locator(".turn-advice li").first();
    await advice.waitFor();
    expect(await advice.textContent()).toMatch(/lugs to (half past \d+|\d+ o'clock), wires \d+ mm shorter/);
    expect(await advice.locator(".hint").isVisible()).toBe(true);
    expect(await advice.locator(".hint").textContent()).not.toBe("");
    await advice.getByRole("button", { name: "Turn it" }).click();
    const turned = async () => Object.values((await source()).parts).filter(({ place }) => (place?.turn ?? 0) !== 0);
    await expect.poll(async () => (await turned()).length).toBe(1);
    await page.keyboard.press("Control+z");
    await expect.poll(async () => JSON.stringify(await source())).toBe(before);
    expectQuiet(visit);
  });
});
