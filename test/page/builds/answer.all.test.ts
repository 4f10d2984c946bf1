import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { openScenario, settled, showTab, whenReady } from "../actions.ts";
import { expectQuiet, usePage } from "../browser.ts";

describeWith("chromium", "A against B", () => {
  const site = usePage();

  it("begins with the answer to the example's question, and tells the settings and tolerance when asked", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await openScenario(page, /HSS guard/);
    await showTab(page, "A against B");
    const panel = page.locator("#panel-builds");
    const answer = panel.locator(".verdict");
    await expect
      .poll(() => answer.textContent())
      .toMatch(/^500 kΩ instead of 250 kΩ at the volume, upper tone and lower tone is plainly heard .*brighter/);
    // Worked out beside the page's thread: it is there without the service.
    expect(asked).not.toContain("/api/compare");
    expect(await panel.textContent()).toContain("Do 500 kΩ pots cure the bridge");
    await panel.getByRole("button", { name: "Setting by setting, and against tolerance" }).click();
    await panel.getByText(/^Most different first: .* It is more than tolerance: /).waitFor({ timeout: 120_000 });
    expectQuiet(visit);
  });

  it("speaks of the two as they are changed", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /no-load/i);
    await showTab(page, "A against B");
    const answer = page.locator("#panel-builds .verdict");
    await expect
      .poll(() => answer.textContent())
      .toMatch(/^A no-load track .*with the tone at 5 and 9 nobody hears it/);
    await page.getByRole("button", { name: "Swap A and B" }).click();
    await settled(page);
    await expect.poll(() => answer.textContent()).toMatch(/^A track that stays connected .*duller/);
  });
});
