import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "the passport on the page", () => {
  const site = usePage();

  const folder = mkdtempSync(join(tmpdir(), "passport-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  async function open() {
    const visit = await site.visit();
    await whenReady(visit.page);
    await showTab(visit.page, "Passport");
    await visit.page.locator("article.passport svg.drawing").waitFor();
    return visit;
  }

  it("holds what was written to what should be read, and keeps it on this device", async () => {
    const visit = await open();
    const { page } = visit;
    await page.getByLabel("Which guitar").fill("the blue one");
    await page.getByLabel(/^Position 5/).fill("1k2");
    await page.getByLabel("Neck single coil, bass end").fill("2,4");
    await page.getByLabel("Neck single coil, treble end").fill("2");
    const paper = page.locator("article.passport");
    await expect.poll(() => paper.textContent()).toMatch(/1k2 .*does not fit/);
    expect(await paper.textContent()).toMatch(/the blue one[\s\S]*bass 2\.4 mm, treble 2 mm/);
    await bringAxe(page);
    expect(await seriousFindings(page, "main")).toEqual([]);
    await page.reload();
    await whenReady(page);
    await showTab(page, "Passport");
    await expect.poll(() => page.locator("article.passport").textContent()).toMatch(/the blue one[\s\S]*1k2/);
    expectQuiet(visit);
  });

  it("is that of the guard opened while it is shown, on the paper and in the file", async () => {
    const { page } = await open();
    const title = page.locator("article.passport").getByRole("heading").first();
    for (const [scenario, told] of [
      [/^HSH: splits in positions 2 and 4, tones/, "HSH: splits in positions 2 and 4, tones for neck and bridge"],
      [/^HSH: both humbuckers split/, "HSH: both humbuckers split by one push-pull"],
      [/^A long lead/, "Stage guard, 3 m lead"],
    ] as const) {
      await openScenario(page, scenario);
      await expect.poll(() => title.textContent()).toBe(told);
    }
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save a label" }).click();
    expect((await saved).suggestedFilename()).toBe("stage-guard-3-m-lead-label.pdf");
  });

  it("tells beside its field what is no reading and no height, and leaves it out", async () => {
    const { page } = await open();
    const field = page.getByLabel(/^Position 1/);
    await field.fill("some");
    await expect.poll(() => field.getAttribute("aria-invalid")).not.toBeNull();
    await page.getByLabel("Middle single coil, bass end").fill("three");
    expect(await page.locator(".detail-group .fault-text:visible").count()).toBe(2);
    await expect.poll(() => page.locator("article.passport").textContent()).not.toMatch(/some/);
  });

  it("is printed without the rest of the page", async () => {
    const { page } = await open();
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".guard-panel").isVisible()).toBe(false);
    expect(await page.locator("article.passport").isVisible()).toBe(true);
    await page.emulateMedia({ media: "screen" });
  });

  describeWith("poppler", "as a file", () => {
    it("is saved as one page with the guard as it is drawn", async () => {
      const { page } = await open();
      const saved = page.waitForEvent("download");
      await page.getByRole("button", { name: "Save the page (PDF)" }).click();
      const file = join(folder, "passport.pdf");
      await (await saved).saveAs(file);
      const text = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
      // Lugs and parts of the drawing, which the texts beside it do not have.
      for (const word of ["Spring claw (strings)", "sleeve", "Five-position lever", "Shielding foil"])
        expect(text).toContain(word);
    });
  });

  it("says in so many words that a code with this computer's own address opens nothing elsewhere", async () => {
    const { page } = await open();
    const hint = page.getByText("Only this computer reaches the service");
    expect(await hint.isVisible()).toBe(true);
    await page.getByLabel("Address in the code").fill("https://guards.example");
    await expect.poll(() => hint.isVisible()).toBe(false);
  });
});
