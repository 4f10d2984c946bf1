import { expect, it } from "vitest";
import { pickupType } from "../../src/build-file/catalogue/pickup-types.ts";
import type { KeptDrawer } from "../../src/drawer/kept-drawer.ts";
import { writeShelfFile } from "../../src/shelf/file/shelf-file.ts";
import { describeWith } from "../tools.ts";
import { draftOf, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { usePage } from "./browser.ts";
import { giveFile, openShelf } from "./shelf/shelf-page.ts";

const PHONE = { width: 390, height: 844 };

describeWith("chromium", "a sound wanted", () => {
  const site = usePage();

  it("is said in words, shown as targets, changed without a word, and opened as a plan that can be undone", async () => {
    const { page } = await site.visit(PHONE);
    await whenReady(page);
    const before = (await draftOf(page)).source;
    await showTab(page, "Sound wanted");
    const panel = page.locator(".wanted-panel");
    await panel.getByLabel("What you want to hear").fill("glasy 4, hum-free 2");
    await panel.getByRole("button", { name: "Read it" }).click();
    await panel.getByText("“glasy” is not known here; did you mean “glassy”?").waitFor();
    await panel.getByRole("button", { name: "Add a place" }).click();
    const added = panel.locator("fieldset").nth(1);
    await added.getByLabel("Where").selectOption({ label: "Position 4" });
    await panel.locator("fieldset").nth(1).getByLabel("Add a word").selectOption("glassy");
    await panel.locator("summary", { hasText: "glassy" }).click();
    await panel.getByLabel("peak's height, at least, dB").fill("3");
    await panel.getByLabel("peak's height, at least, dB").blur();
    await expect.poll(() => panel.locator("summary", { hasText: "glassy" }).textContent()).toContain("at least 3 dB");

    await panel.getByLabel("Begin with").selectOption("own");
    await panel.getByLabel("Add switches to the best").uncheck();
    await panel.getByRole("button", { name: "Find guards" }).click();
    const found = panel.locator(".found-guard").first();
    await found.waitFor({ timeout: 60_000 });
    expect(await found.textContent()).toMatch(/volume 2?[05]+0 kΩ/);
    expect(await found.locator("tbody tr").count()).toBe(3);
    const old = panel.getByText("The guards below were found for other wishes");
    expect(await old.isVisible()).toBe(false);
    await panel.getByLabel("peak's height, at least, dB").fill("2");
    await panel.getByLabel("peak's height, at least, dB").blur();
    await old.waitFor();
    await panel.getByLabel("peak's height, at least, dB").fill("3");
    await panel.getByLabel("peak's height, at least, dB").blur();
    await old.waitFor({ state: "hidden" });
    const low = await panel.locator("button, select, input:not([type=checkbox]), summary").evaluateAll((all) =>
      all.flatMap((each) => {
        const { height } = each.getBoundingClientRect();
        return each.checkVisibility() && height < 43.5 ? [`${each.textContent} ${height}`] : [];
      }),
    );
    expect(low).toEqual([]);
    await bringAxe(page);
    expect(await seriousFindings(page, ".wanted-panel")).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);

    await found.getByRole("button", { name: /^Put it on the bench/ }).click();
    await page.getByText("The guard is on the bench, as a plan.").waitFor();
    expect(JSON.stringify((await draftOf(page)).source)).not.toBe(JSON.stringify(before));
    await page.keyboard.press("Control+z");
    await expect.poll(async () => JSON.stringify((await draftOf(page)).source)).toBe(JSON.stringify(before));
  });

  it("is held to the drawer, and says what a guard lacks there", async () => {
    const { page } = await site.visit(PHONE);
    await whenReady(page);
    const shelf = await openShelf(page);
    const part = (id: string, of: object) => ({ id, part: of, count: 1 });
    const drawer = {
      id: "drawer",
      currency: "",
      items: [
        part("a", { kind: "pot", resistance: "330k", taper: "audio" }),
        part("b", { kind: "cap", capacitance: "33n" }),
        part("c", { kind: "pickup", type: "single-hot", coils: pickupType("single-hot")!.coils }),
      ],
      kits: [],
      wires: [],
      counted: {},
    } as unknown as KeptDrawer;
    await giveFile(shelf, "mine.shelf.json", writeShelfFile([], new Date(), drawer));
    await shelf.getByText("Put into the drawer: 3 sorts of part.").waitFor();
    await showTab(page, "Sound wanted");
    const panel = page.locator(".wanted-panel");
    await panel.getByLabel("What you want to hear").fill("bright bridge");
    await panel.getByRole("button", { name: "Read it" }).click();
    await panel.getByLabel("Only pickups, pots and caps of my drawer").check();
    await panel.getByRole("button", { name: "Find guards" }).click();
    const found = panel.locator(".found-guard").first();
    await found.waitFor({ timeout: 60_000 });
    expect(await found.textContent()).toContain("330 kΩ");
    expect(await found.textContent()).toMatch(/Not in the drawer: .*1 × .*(lever|jack)/);
  });
});
