import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { draftOf, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "what the guitar is plugged into", () => {
  const site = usePage();

  it("is chosen by what it is, changes all its values at once, and the lead keeps its length", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await showTab(page, "Parts");
    await page.getByLabel("Plugged into").selectOption({ label: "a valve amplifier, triode first" });
    await settled(page);
    await page.getByLabel("Sort of cable").selectOption({ label: "a high-capacitance lead" });
    await settled(page);
    const { source } = (await draftOf(page)) as { source: Record<string, unknown> };
    expect(source.load).toEqual({ resistance: "1M", capacitance: "105p", stopper: "68k" });
    expect(source.cable).toMatchObject({ capacitance: "160p", length: expect.anything() });
    await page.locator('[data-path="load.stopper"]').fill("47k");
    await page.locator('[data-path="load.stopper"]').press("Enter");
    await settled(page);
    expect(await page.getByLabel("Plugged into").inputValue()).toBe("");
    expectQuiet(visit);
  });
});
