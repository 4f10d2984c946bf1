import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "the bench on the page", () => {
  const site = usePage();

  async function openTab(tab: string, scenario = /HSS/) {
    const visit = await site.visit();
    await whenReady(visit.page);
    await openScenario(visit.page, scenario);
    await visit.page.locator(".finding, .all-well").first().waitFor();
    await showTab(visit.page, tab);
    return visit;
  }

  it("shows the cautions before any soldering, and keeps a tick through a reload", async () => {
    const visit = await openTab("Solder");
    const { page } = visit;
    const panel = page.locator("#panel-solder");
    expect(await panel.locator(".caution").first().textContent()).toMatch(/Never open an amplifier/);
    const first = panel.getByLabel(/^Joint 1\./);
    await first.check();
    await page.reload();
    await whenReady(page);
    await showTab(page, "Solder");
    await expect.poll(() => panel.getByLabel(/^Joint 1\./).isChecked()).toBe(true);
    expect(await panel.getByLabel(/^Joint 2\./).isChecked()).toBe(false);
    await showTab(page, "Wires");
    expect(await page.locator("#panel-wires .caution").textContent()).toMatch(/iron/);
    expectQuiet(visit);
  });

  it("takes what is in the drawer off what is to be bought", async () => {
    const { page } = await openTab("Solder");
    const field = page.getByLabel(/^In the drawer: cap 22 nF/);
    await field.fill("1");
    await field.press("Tab");
    const row = page.locator("#panel-solder tr", { hasText: "cap 22 nF" });
    await expect.poll(() => row.locator("td").last().textContent()).toBe("1");
  });

  it("says whether a measured value fits, and finds the fault that explains it", async () => {
    const visit = await openTab("Measure");
    const { page } = visit;
    const reading = (position: number) => page.getByLabel(new RegExp(`^Measured: jack, lever ${position}`)).first();
    const expected = await reading(5).getAttribute("placeholder");
    await reading(5).fill(expected!);
    await expect.poll(() => reading(5).locator("xpath=../span").textContent()).toBe("fits");
    // With the neck's hot lead off, only the volume's track is left.
    await reading(5).fill("250k");
    await expect.poll(() => reading(5).locator("xpath=../span").textContent()).toBe("does not fit");
    for (const position of [1, 3]) await reading(position).fill((await reading(position).getAttribute("placeholder"))!);
    await page.getByRole("button", { name: "What explains this?" }).click();
    const first = page.locator(".explanations li").first();
    await first.waitFor();
    expect(await first.textContent()).toMatch(/neck/i);
    expectQuiet(visit);
  });

  it("takes what was noticed without a meter", async () => {
    const { page } = await openTab("Measure");
    await page.getByLabel("What you noticed").selectOption("no-sound");
    await page.getByLabel("Where", { exact: true }).selectOption("3");
    await page.getByRole("button", { name: "Add what you noticed" }).click();
    expect(await page.locator(".told li").textContent()).toContain("position 3");
    await page.getByRole("button", { name: "What explains this?" }).click();
    await page.locator(".explanations li").first().waitFor();
    expect(await page.locator(".explanations li").first().textContent()).toMatch(/middle|lever/i);
  });

  it("marks in the drawing what the audit finds, by number", async () => {
    const { page } = await openTab("Parts", /came back/i);
    const found = await page.locator(".finding").count();
    expect(found).toBeGreaterThan(0);
    const numbers = await page.locator("svg.guard .mark text").allTextContents();
    expect(new Set(numbers)).toEqual(new Set(Array.from({ length: found }, (_, index) => String(index + 1))));
  });
});
