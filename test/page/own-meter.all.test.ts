import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

const POCKET = "manual-2000";
const PHONE = { width: 390, height: 844 };

describeWith("chromium", "a person's own meter on the page", () => {
  const site = usePage();

  async function measureTab() {
    const visit = await site.stay(PHONE);
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await showTab(page, "Measure");
    const panel = page.locator("#panel-measure");
    await panel.locator("tbody tr").first().waitFor();
    return { visit, page, panel, meter: panel.getByLabel("Your meter") };
  }

  it("is chosen next to the temperature, shows in every row what stands on it, and fits a phone", async () => {
    const { visit, page, panel, meter } = await measureTab();
    expect(await panel.locator("caption").first().textContent()).toContain("coils at 20 °C");
    await meter.selectOption(POCKET);
    const onMeter = panel.locator('td[data-column="On your meter"]');
    await expect.poll(() => onMeter.first().textContent()).toMatch(/^\d\.\d\d on the 20 kΩ range$/);
    expect(await onMeter.count()).toBe(await panel.locator("tbody tr").count());
    expect(await panel.locator(".meter-notes").textContent()).toMatch(/1 alone at the left/);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await bringAxe(page);
    expect(await seriousFindings(page, "#panel-measure")).toEqual([]);
    expectQuiet(visit);
  });

  it("says how long to wait where a capacitor must charge, and that open is what it shows over its range", async () => {
    const { page, panel, meter } = await measureTab();
    await meter.selectOption("auto-6000");
    await page.getByLabel("First probe on").fill("cap1.a");
    await page.getByLabel("Second probe on").fill("claw");
    await page.getByRole("button", { name: "Add this reading" }).click();
    const row = panel.locator("tr", { hasText: "cap1.a" });
    await expect.poll(() => row.locator('td[data-column="Within"]').textContent()).toBe("open (OL)");
    await expect
      .poll(() => row.locator('td[data-column="On your meter"]').textContent())
      .toMatch(/^OL; wait [\d.]+ s until it stands still; it goes through its ranges meanwhile$/);
    await panel.getByRole("button", { name: /^Take out/ }).click();
  });

  it("takes its 1 at the left for over the range in the table, and asks for the unit that a display leaves out", async () => {
    const { page, panel, meter } = await measureTab();
    await meter.selectOption(POCKET);
    const row = panel.locator("tr", { hasText: /^jack, lever 1/ }).first();
    await expect.poll(() => row.locator("td").nth(2).textContent()).toMatch(/20 kΩ range/);
    const [field, verdict] = [row.getByRole("textbox"), row.locator(".measured-verdict")];
    const shown = (await row.locator("td").nth(2).textContent())!.split(" ")[0]!;
    await field.fill(shown);
    expect(await verdict.textContent()).toBe(`does not fit as ohms; write ${shown}k`);
    await field.fill(`${shown}k`);
    expect(await verdict.textContent()).toBe("fits");
    await field.fill("1 .");
    expect(await verdict.textContent()).toBe("does not fit");
    const sent = page.waitForRequest("**/api/diagnose");
    await page.getByRole("button", { name: "What explains this?" }).click();
    const body = (await sent).postDataJSON();
    expect(body.meter).toEqual({ kind: POCKET });
    expect(body.readings).toContainEqual(expect.objectContaining({ above: 20_000 }));
    await panel.locator(".diagnosis").waitFor();
  });

  it("sends the range that ohms stood on, the table's or the one set, and none where they cannot have stood there", async () => {
    const { page, panel, meter } = await measureTab();
    await meter.selectOption(POCKET);
    const row = panel.locator("tr", { hasText: /^jack, lever 1/ }).first();
    await expect.poll(() => row.locator("td").nth(2).textContent()).toMatch(/20 kΩ range/);
    const sentWith = async (shown: string, range: string) => {
      await panel.getByLabel(/^Meter range/).selectOption(range);
      await row.getByRole("textbox").fill(shown);
      const sent = page.waitForRequest("**/api/diagnose");
      await page.getByRole("button", { name: "What explains this?" }).click();
      const [first] = (await sent).postDataJSON().readings;
      await panel.locator(".diagnosis").waitFor();
      return first.range;
    };
    expect(await sentWith("7.42k", "table")).toBe(20_000);
    expect(await sentWith("7.4k", "200000")).toBe(200_000);
    expect(await sentWith("0", "2000000")).toBe(2_000_000);
    expect(await sentWith("7.42k", "200000")).toBeUndefined();
    await row.getByRole("textbox").fill("");
  });

  it("is kept in the browser, serves the lead finder too, and is any hobby meter again when that is chosen", async () => {
    const { page, panel, meter } = await measureTab();
    await meter.selectOption(POCKET);
    const leads = panel.getByLabel(/^Its probes together/);
    await leads.fill("0.6");
    await page.reload();
    await whenReady(page);
    await showTab(page, "Measure");
    await expect.poll(() => meter.inputValue()).toBe(POCKET);
    expect(await leads.inputValue()).toBe("0.6");
    await showTab(page, "What is it?");
    expect(await page.locator(".lead-finder").getByLabel("Your meter").inputValue()).toBe(POCKET);
    await showTab(page, "Measure");
    await meter.selectOption("");
    await expect.poll(() => panel.locator('td[data-column="On your meter"]').count()).toBe(0);
  });
});
