import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, settled, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "where a value comes from", () => {
  const site = usePage();

  async function openParts() {
    const visit = await site.stay();
    await whenReady(visit.page);
    await openScenario(visit.page, /HSS/);
    await showTab(visit.page, "Parts");
    return visit;
  }

  it("is told beside it when asked, with how sure it is, and folds away again", async () => {
    const visit = await openParts();
    const { page } = visit;
    const field = page.locator('.field:has([data-path="parts.cap1.capacitance"])');
    const button = field.getByRole("button", { name: "Where does 22 nF come from?" });
    await button.waitFor();
    expect(await field.getByRole("note").count()).toBe(0);
    await button.focus();
    await page.keyboard.press("Enter");
    const words = field.getByRole("note");
    await words.waitFor();
    expect(await words.textContent()).toMatch(/^Common practice: .*No source/);
    expect(await button.getAttribute("aria-expanded")).toBe("true");
    await button.click();
    await words.waitFor({ state: "hidden" });
    expectQuiet(visit);
  });

  it("is marked where it is memory alone, without anything being asked", async () => {
    const { page } = await openParts();
    await page.locator('article:has([data-path="parts.neck.coils.coil.distance"]) summary').click();
    const distance = page.locator('.field:has([data-path="parts.neck.coils.coil.distance"])');
    await distance.getByText("from memory", { exact: true }).waitFor();
    await distance.getByRole("button", { name: /^Where does/ }).click();
    const words = distance.getByRole("note");
    await words.waitFor();
    expect(await words.textContent()).toMatch(/^From memory: no published table/);
    const [word, card] = [await words.boundingBox(), await page.locator("article", { has: distance }).boundingBox()];
    expect(word!.width).toBeGreaterThan(0.85 * card!.width);
    const resistance = page.locator('.field:has([data-path="parts.neck.coils.coil.resistance"])');
    await resistance.getByRole("button", { name: /^Where does .* kΩ come from\?$/ }).waitFor();
    expect(await resistance.getByText("from memory", { exact: true }).isVisible()).toBe(false);
  });

  it("is asked no more of a value that a person has changed", async () => {
    const { page } = await openParts();
    const cap = page.locator('[data-path="parts.cap1.capacitance"]');
    const button = page.locator('.field:has([data-path="parts.cap1.capacitance"])').getByRole("button");
    await button.waitFor();
    await cap.fill("24n");
    await cap.press("Enter");
    await settled(page);
    await button.waitFor({ state: "hidden" });
  });

  it("is told in the plan of a pickup as a whole, value by value", async () => {
    const visit = await openParts();
    const { page } = visit;
    await showTab(page, "Plan");
    const button = page
      .getByRole("button", { name: /^Where does what is said of single coil, .* come from\?$/ })
      .first();
    await button.click();
    const words = page.locator(".plan-form").getByRole("note");
    await words.waitFor();
    expect(await words.textContent()).toMatch(/Measured \(.*capacitance.*\).*From memory|From memory.*Measured/);
    expectQuiet(visit);
  });
});
