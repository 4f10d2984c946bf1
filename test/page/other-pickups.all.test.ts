import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { presetGuard, withoutPickups } from "../fixtures/harness.ts";
import { describeWith } from "../tools.ts";
import { draftOf, featuresOf, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "a guard with other pickups, or none yet", () => {
  const site = usePage();

  async function openGuard(guard: object) {
    const visit = await site.stay();
    await whenReady(visit.page);
    await openFile(visit.page, guard);
    return visit;
  }

  async function openFile(page: Page, guard: object) {
    const file = { name: "guard.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(guard)) };
    await page.getByLabel("Open build file").setInputFiles(file);
    await expect.poll(async () => (await draftOf(page)).source).toEqual(guard);
  }

  const which = (page: Page, name: string) => page.locator(`[data-path="parts.${name}.type"]`);
  const found = (page: Page) => page.locator(".found").textContent();

  it("takes a four-lead humbucker for a single coil in one action, with every wire carried and nothing wrong", async () => {
    const guard = presetGuard("singles-master-tone");
    const visit = await openGuard(guard);
    const { page } = visit;
    await showTab(page, "Parts");
    await which(page, "bridge").selectOption("humbucker-medium");
    const { source } = (await draftOf(page)) as { source: { wires: { from: string; to: string }[] } };
    const at = source.wires.filter(({ from }) => from.startsWith("bridge."));
    expect(at.map(({ from, to }) => `${from} ${to}`)).toEqual([
      "bridge.slug.finish lever.A1",
      "bridge.screw.finish volume.case",
      "bridge.slug.start bridge.screw.start",
      "bridge.shield volume.case",
    ]);
    await expect.poll(() => page.locator(".change-line").first().textContent()).toContain("wires");
    await expect.poll(() => found(page)).toMatch(/^1?Note: Bridge works into 125 kΩ/);
    expect(await found(page)).not.toMatch(/Fault|Warning/);
    expect(await page.locator(".faults").isVisible()).toBe(false);

    await page.locator('[data-path="parts.bridge.hotCoil"]').selectOption({ label: "screw coil (south)" });
    const turned = (await draftOf(page)).source as typeof source;
    expect(turned.wires.map(({ from, to }) => `${from} ${to}`)).toContain("bridge.screw.start lever.A1");
    await page.getByRole("button", { name: "Undo" }).first().click();
    await page.getByRole("button", { name: "Undo" }).first().click();
    expect((await draftOf(page)).source).toEqual(guard);
    expectQuiet(visit);
  });

  it("forgets the type where a coil has values of its own", async () => {
    const { page } = await openGuard(presetGuard("singles-master-tone"));
    await showTab(page, "Parts");
    const card = page.locator(".part-card", { has: which(page, "bridge") });
    await card.locator("summary").click();
    const ohms = card.locator('[data-path="parts.bridge.coils.coil.resistance"]');
    await ohms.fill("7k");
    await ohms.press("Enter");
    await expect.poll(() => which(page, "bridge").inputValue()).toBe("");
  });

  it("shows no verdict of an older state while the guard cannot be read, and says so beside curves and drawing", async () => {
    const visit = await openGuard(presetGuard("singles-master-tone"));
    const { page } = visit;
    await expect.poll(() => found(page)).toContain("nothing found wrong");
    await showTab(page, "Wires");
    const end = page.getByLabel("Wire 1, to");
    const before = await end.inputValue();
    await end.fill("volume.33");
    await end.press("Enter");
    await page.locator(".faults button").waitFor();
    expect(await found(page)).not.toContain("nothing found wrong");
    expect(await found(page)).toContain("cannot be read");
    expect(await page.locator(".stale-note:visible").count()).toBe(2);
    await showTab(page, "Solder");
    await expect
      .poll(() => page.getByRole("tabpanel").filter({ visible: true }).textContent())
      .toContain("cannot be read");
    expect(await page.getByRole("tabpanel").filter({ visible: true }).textContent()).not.toContain("Joint 1");
    await showTab(page, "Wires");
    await end.fill(before);
    await end.press("Enter");
    await expect.poll(() => found(page)).toContain("nothing found wrong");
    expect(await page.locator(".stale-note:visible").count()).toBe(0);
    expectQuiet(visit);
  });

  it("draws, meters, sheets and sends a harness without pickups, and says that there is nothing to hear yet", async () => {
    const visit = await openGuard(withoutPickups(presetGuard("singles-master-tone")));
    const { page } = visit;
    await expect.poll(() => page.locator(".controls-section").textContent()).toMatch(/nothing to hear yet/i);
    await expect.poll(() => featuresOf(page)).toMatch(/nothing to hear yet/i);
    await expect.poll(() => found(page)).toContain("no pickup yet");
    expect(await page.locator("svg.guard .part-pickup").count()).toBe(0);
    expect(await page.locator("svg.guard .part-pot").count()).toBe(2);
    await page.getByRole("button", { name: "Play" }).first().click();
    await expect.poll(() => page.locator(".notice").textContent()).toContain("nothing to hear");
    await showTab(page, "Measure");
    await expect.poll(() => page.getByRole("tabpanel").filter({ visible: true }).textContent()).toContain("jack tip");
    await showTab(page, "Solder");
    await expect.poll(() => page.getByRole("tabpanel").filter({ visible: true }).textContent()).toContain("Joint 1");
    await showTab(page, "Send it");
    await page.getByRole("button", { name: "Copy a link to this guard" }).click();
    await expect.poll(() => page.locator(".link-field").inputValue()).toContain("/b/");
    // Pickups come later, and no wire of the harness is touched.
    await showTab(page, "Parts");
    await page.getByLabel("Another part").selectOption("pickup");
    await page.getByRole("button", { name: "Add it" }).click();
    await expect.poll(() => page.locator("svg.guard .part-pickup").count()).toBe(1);
    expectQuiet(visit);
  });
});
