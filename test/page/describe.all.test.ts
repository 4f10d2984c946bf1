import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

const CAP = '[data-path="parts.cap1.capacitance"]';

describeWith("chromium", "describing a guard", () => {
  const site = usePage();

  async function openGuard() {
    const visit = await site.stay();
    await whenReady(visit.page);
    await openScenario(visit.page, /HSS/);
    await showTab(visit.page, "Parts");
    return visit;
  }

  it("reads a cap in every spelling of the trade and shows how it was read", async () => {
    const { page } = await openGuard();
    const cap = page.locator(CAP);
    for (const [written, read] of [
      ["0.022", "= 22 nF"],
      ["22n", "= 22 nF"],
      ["223", "= 22 nF"],
      ["473K", "= 47 nF ±10 %"],
      [".1uF", "= 100 nF"],
    ]) {
      await cap.fill(written!);
      expect(await cap.locator("xpath=../span").textContent(), written).toBe(read);
    }
  });

  thoroughly(
    "takes a pot's electrical angle from its data sheet, with the flat ends in words beside it, and refuses one it cannot have",
    async () => {
      const { page } = await openGuard();
      const angle = page.locator('[data-path="parts.volume.angles"]');
      await angle.evaluate((each) => each.closest("details")?.setAttribute("open", ""));
      expect(await angle.locator("xpath=..").textContent()).toMatch(/300°; 15° at the bottom and 15 to 30° at the top/);
      await angle.fill("400");
      await angle.press("Enter");
      await expect.poll(() => angle.getAttribute("aria-invalid")).toBe("true");
      await angle.fill("225");
      await angle.press("Enter");
      await expect.poll(() => angle.getAttribute("aria-invalid")).toBeNull();
      await angle.fill("");
      await angle.press("Enter");
      await expect.poll(() => angle.inputValue()).toBe("");
    },
  );

  thoroughly(
    "tells a fault beside its field, keeps the last readable curve, and leads from the list to the field",
    async () => {
      const visit = await openGuard();
      const { page } = visit;
      const before = await featuresOf(page);
      const cap = page.locator(CAP);
      await cap.fill("22x");
      await cap.press("Enter");
      await page.locator(".faults button").waitFor();
      const fault = page.locator(`#${await cap.getAttribute("aria-describedby")}`);
      expect(await fault.textContent()).toContain("22x");
      expect(await cap.getAttribute("aria-invalid")).toBe("true");
      expect(await featuresOf(page)).toBe(before);
      await showTab(page, "Send it");
      await page.locator(".faults button").click();
      await expect.poll(() => cap.evaluate((each) => each === document.activeElement)).toBe(true);
      await cap.fill("33n");
      await cap.press("Enter");
      await expect.poll(() => page.locator(".faults").isVisible()).toBe(false);
      expectQuiet(visit);
    },
  );

  thoroughly("offers the lugs there are and names the nearest one where a wire goes to none", async () => {
    const { page } = await openGuard();
    await showTab(page, "Wires");
    const offered = await page
      .locator("#lug-names option")
      .evaluateAll((all) => all.map((each) => `${each.getAttribute("value")} = ${each.textContent}`));
    expect(offered).toContain("volume, lug 3 (clockwise end) = volume.3");
    expect(offered).toContain("lever, lug of the neck pickup, second side = lever.B3");
    const end = page.getByLabel("Wire 1, to");
    await end.fill("volume.33");
    await end.press("Enter");
    await page.locator(".faults button").waitFor();
    const fault = page.locator(`#${await end.getAttribute("aria-describedby")}`);
    expect(await fault.textContent()).toContain('did you mean "volume.3"?');
  });

  thoroughly(
    "says beside the field that a wire ends where it starts, and which end of a new wire is missing",
    async () => {
      const visit = await openGuard();
      const { page } = visit;
      await showTab(page, "Wires");
      const [from, to] = [page.getByLabel("Wire 1, from"), page.getByLabel("Wire 1, to")];
      await to.fill((await from.inputValue()).toUpperCase());
      await to.press("Enter");
      await page.locator(".faults button").waitFor();
      const fault = page.locator(`#${await to.getAttribute("aria-describedby")}`);
      expect(await fault.textContent()).toContain("joins a lug with itself");
      expect(await to.inputValue()).toBe(await from.inputValue());
      await page.getByLabel("New wire, from").fill("neck.shield");
      await page.getByRole("button", { name: "Add wire" }).click();
      const end = page.getByLabel("New wire, to");
      expect(await page.locator(`#${await end.getAttribute("aria-describedby")}`).textContent()).toContain("goes to");
      expectQuiet(visit);
    },
  );

  it("adds and takes out wires and parts, and walks back and forth through all of it", async () => {
    const { page } = await openGuard();
    await showTab(page, "Wires");
    const count = () => page.locator(".wire-list .wire-row").count();
    const wires = await count();
    await page.getByLabel("New wire, from").fill("neck.shield");
    await page.getByLabel("New wire, to").fill("volume.case");
    await page.getByRole("button", { name: "Add wire" }).click();
    await expect.poll(count).toBe(wires + 1);
    await page.getByRole("button", { name: "Take out wire 1", exact: true }).click();
    await expect.poll(count).toBe(wires);
    await showTab(page, "Parts");
    await page.getByLabel("Another part").selectOption("resistor");
    await page.getByRole("button", { name: "Add it" }).click();
    await expect.poll(() => page.locator('[data-path="parts.resistor.resistance"]').count()).toBe(1);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => page.locator('[data-path="parts.resistor.resistance"]').count()).toBe(0);
    await page.keyboard.press("Control+z");
    await expect.poll(count).toBe(wires + 1);
    await page.keyboard.press("Control+Shift+z");
    await expect.poll(count).toBe(wires);
  });

  thoroughly(
    "puts a cover on with one click, keeps the guard without it as B, and says whether anybody hears it",
    async () => {
      const visit = await openGuard();
      const { page } = visit;
      const card = page.locator(".part-card", { has: page.locator("h3", { hasText: /humbucker/ }) });
      await card.locator("summary").click();
      const before = await featuresOf(page);
      await card.getByRole("button", { name: "Compare with a cover on" }).click();
      const verdict = card.locator("[aria-live]", { hasText: "A: cover on. B: cover off." });
      await verdict.waitFor();
      expect(await verdict.textContent()).toMatch(
        /(not heard|is (heard|plainly heard|at the edge)|makes another sound).* dB at .*k?Hz/,
      );
      expect(await featuresOf(page)).not.toBe(before);
      await card.getByRole("button", { name: "Compare with the cover off" }).click();
      await card.locator("[aria-live]", { hasText: "A: cover off. B: cover on." }).waitFor();
      expect(await featuresOf(page)).toBe(before);
      expectQuiet(visit);
    },
  );

  thoroughly("keeps the draft and how it is heard through a reload", async () => {
    const { page } = await openGuard();
    await page.locator(CAP).fill("68n");
    await page.locator(CAP).press("Enter");
    await page.getByRole("slider", { name: "Volume" }).fill("7");
    const [phrase, hand, strings] = ["Phrase", "Hand", "Strings"].map((label) =>
      page.getByLabel(label, { exact: true }),
    );
    await phrase!.selectOption("swell");
    await hand!.selectOption("dark");
    await strings!.selectOption("old");
    await page.reload();
    await whenReady(page);
    await expect.poll(() => phrase!.inputValue()).toBe("swell");
    expect([await hand!.inputValue(), await strings!.inputValue()]).toEqual(["dark", "old"]);
    await showTab(page, "Parts");
    expect(await page.locator(CAP).inputValue()).toBe("68n");
    expect(await page.getByRole("slider", { name: "Volume" }).inputValue()).toBe("7");
  });

  thoroughly("saves a build file that opens again as the same guard, and refuses what is none", async () => {
    const { page } = await openGuard();
    await page.locator(CAP).fill("10n");
    await page.locator(CAP).press("Enter");
    const features = await featuresOf(page);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save build file" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("hss-guard-250-k-pots.presolder.json");
    const saved = Buffer.concat(await (await download.createReadStream()).toArray());
    expect(JSON.parse(saved.toString()).parts.cap1.capacitance).toBe("10n");
    await openScenario(page, /long lead/);
    await page.getByLabel("Open build file").setInputFiles({
      name: "guard.json",
      mimeType: "application/json",
      buffer: saved,
    });
    await expect.poll(() => featuresOf(page)).toBe(features);
    await page.getByLabel("Open build file").setInputFiles({
      name: "picture.json",
      mimeType: "application/json",
      buffer: Buffer.from("{"),
    });
    await expect.poll(() => page.locator(".notice").textContent()).toContain("picture.json cannot be read");
    expect(await page.locator(".notice").textContent()).toContain("near line 1, column 2 (expected JSON)");
  });

  thoroughly(
    "shows where the guard comes from, and asks before a file with faults takes a good guard's place",
    async () => {
      const visit = await openGuard();
      const { page } = visit;
      const select = page.getByLabel("Start from");
      const shown = () => select.evaluate((each) => (each as HTMLSelectElement).selectedOptions[0]!.textContent);
      expect(await shown()).toMatch(/HSS|pots/);
      const features = await featuresOf(page);
      const draft = () => page.evaluate(() => localStorage.getItem("presolder.draft.1"));
      await expect.poll(draft).not.toBeNull();
      const { source } = JSON.parse((await draft())!);
      const open = (name: string, value: unknown) =>
        page
          .getByLabel("Open build file")
          .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(JSON.stringify(value)) });
      const bad = { ...source, title: "Bad", parts: { ...source.parts, cap1: { kind: "cap", capacitance: "22x" } } };
      await open("bad.json", bad);
      await page.getByText("bad.json has faults and was not opened").waitFor();
      expect(await page.getByLabel("This guard").inputValue()).toBe(source.title);
      expect(await featuresOf(page)).toBe(features);
      await page.getByRole("button", { name: "Open it anyway" }).click();
      await expect.poll(shown).toBe("file bad.json");
      expect(await page.getByLabel("This guard").inputValue()).toBe("Bad");
      await open("good.json", { ...source, title: "Good" });
      await expect.poll(shown).toBe("file good.json");
      expectQuiet(visit);
    },
  );
});
