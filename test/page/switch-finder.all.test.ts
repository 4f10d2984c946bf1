import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { heardAt } from "../bench/switch-finder/switch-on-bench.ts";
import { CONTACT_TABLES } from "../build-file/contact-tables.ts";
import { describeWith } from "../tools.ts";
import { draftOf, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

const LEVER = CONTACT_TABLES["lever-5"]!;
/** As in no known body: what is drawn must be what was found. */
const ROLES = ["A0", "A1", "A2", "A3", "B3", "B1", "B2", "B0"];

async function begin(page: Page, rows: string, positions: string): Promise<Locator> {
  await showTab(page, "What is it?");
  const panel = page.locator("#panel-unknown");
  await panel.getByLabel("Lugs in each row").fill(rows);
  await panel.getByLabel("Positions of the handle").fill(positions);
  await panel.getByRole("button", { name: "Begin" }).click();
  return panel;
}

const asked = (panel: Locator) => panel.locator(".touch-next b").allTextContents();
const touches = async (panel: Locator) =>
  Number(/\d+/.exec((await panel.getByText(/^What was heard/).textContent())!)![0]);

/** Ticks what a switch beeps at the two lugs asked for, and goes on. */
async function answer(panel: Locator, table: readonly string[], roles: readonly string[]): Promise<void> {
  const [a, b] = (await asked(panel)).map((name) => roles[Number(name) - 1]!);
  for (const position of heardAt(table, a!, b!))
    await panel.getByLabel(`Position ${position}`, { exact: true }).check();
  const before = await touches(panel);
  await panel.getByRole("button", { name: "Next" }).click();
  await expect.poll(() => touches(panel)).toBe(before + 1);
}

async function answerAll(panel: Locator, table: readonly string[], roles: readonly string[]): Promise<void> {
  await panel.locator(".touch-form").waitFor();
  while ((await panel.locator(".touch-form").count()) > 0) await answer(panel, table, roles);
}

describeWith("chromium", "what is it: an unknown switch", () => {
  const site = usePage();

  it("says which lugs to touch, names the switch in the end, and puts it into the guard as found, one step to undo", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    const before = await draftOf(page);
    const panel = await begin(page, "4, 4", "5");
    await panel.locator(".touch-form").waitFor();
    expect(await panel.locator(".found-lug").count()).toBe(8);
    expect(await panel.locator(".found-lug.touched text").allTextContents()).toEqual(await asked(panel));
    expect(await panel.locator(".caution", { hasText: "Before you touch it" }).textContent()).toMatch(
      /Unplug the guitar.*out of its circuit/,
    );
    await answerAll(panel, LEVER, ROLES);
    await panel.getByRole("heading", { name: "Five-position lever switch, two poles" }).waitFor();
    expect(await touches(panel)).toBeLessThanOrEqual(14);
    const contacts = panel.getByRole("table", { name: "Its contacts" });
    expect(await contacts.locator("tbody tr").nth(1).locator("td").textContent()).toBe("1 – 2 – 3, 6 – 7 – 8");

    await panel.getByRole("button", { name: "Use it in this guard" }).click();
    await panel.getByText("It is in the guard").waitFor();
    const after = (await draftOf(page)).source as { parts: Record<string, { lugRows?: unknown }>; wires: unknown };
    expect(after.parts.lever!.lugRows).toEqual([
      ["A0", "A1", "A2", "A3"],
      ["B3", "B1", "B2", "B0"],
    ]);
    expect(after.wires).toEqual((before.source as { wires: unknown }).wires);
    await page.locator(".guard-panel").scrollIntoViewIfNeeded();
    await settled(page);
    const across = (lug: string) =>
      page
        .locator(`svg.guard [data-lug="lever.${lug}"]`)
        .first()
        .evaluate((each) => each.getBoundingClientRect().x);
    const row = await Promise.all(["B3", "B1", "B2", "B0"].map(across));
    expect([...row].sort((a, b) => a - b)).toEqual(row);
    await page.getByRole("button", { name: "Step back" }).click();
    expect((await draftOf(page)).source).toEqual(before.source);
    expect(await panel.getByText("It is in the guard").count()).toBe(0);
    expectQuiet(visit);
  });

  it("does not tell a switch from itself where its patterns are each other turned round", async () => {
    const visit = await site.stay();
    await whenReady(visit.page);
    const panel = await begin(visit.page, "2, 2, 2", "3");
    const table = CONTACT_TABLES["dpdt-on-on-on A1-B2"]!;
    await answerAll(panel, table, ["A1", "B1", "A0", "B0", "A2", "B2"]);
    await panel.getByRole("heading", { name: /^Small switch, on-on-on/ }).waitFor();
    expect(await panel.getByText(/^No beeper tells it/).count()).toBe(0);
    expect(await panel.getByText(/same switch has the same contacts: it is this one, turned round/).count()).toBe(1);
  });

  it("asks where wires go whose job a switch of one's own does not tell", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    // Nothing in the middle: no known switch.
    const panel = await begin(page, "3, 3", "3");
    await answerAll(panel, ["a0-a1 b0-b1", "", "a0-a2 b0-b2"], ["a1", "a0", "a2", "b1", "b0", "b2"]);
    await panel.getByRole("heading", { name: "A switch of its own" }).waitFor();
    expect(await panel.textContent()).toContain("No known switch beeps so");
    const use = panel.getByRole("button", { name: "Use it in this guard" });
    await use.click();
    await panel.getByText("Say which of its lugs").waitFor();
    const choices = panel.locator(".switch-finding select");
    for (let index = 1; index < (await choices.count()); index++)
      await choices.nth(index).selectOption(String(1 + ((index - 1) % 6)));
    await use.click();
    await panel.getByText("It is in the guard").waitFor();
    const { parts } = (await draftOf(page)).source as { parts: Record<string, { positions?: unknown[] }> };
    expect(parts.lever!.positions).toHaveLength(3);
    await page.getByRole("button", { name: "Step back" }).click();
    expectQuiet(visit);
  });

  it("goes by keys alone, takes a touch back, and says what it cannot read beside the field", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    const panel = await begin(page, "none", "0");
    expect(await panel.locator(".fault-text:visible").allTextContents()).toEqual([
      "Say how many lugs are in each row, from the top: 4, 4",
      "Count the positions that the handle stays in: 1 to 24.",
    ]);
    await panel.getByLabel("Lugs in each row").fill("3");
    await panel.getByLabel("Positions of the handle").fill("2");
    await page.keyboard.press("Enter");
    await expect.poll(() => asked(panel)).toHaveLength(2);
    const first = await asked(panel);
    await panel.getByLabel("Position 1", { exact: true }).focus();
    await page.keyboard.press("Space");
    await page.keyboard.press("Enter");
    await expect.poll(() => touches(panel)).toBe(1);
    expect(await panel.getByRole("table", { name: "What is known so far" }).textContent()).toContain(first.join(" – "));
    const focused = () => page.evaluate(() => (document.activeElement as HTMLInputElement).value);
    expect(await focused()).toBe("1");
    await panel.getByRole("button", { name: "Undo the last touch" }).press("Enter");
    await expect.poll(() => asked(panel)).toEqual(first);
    expect(await touches(panel)).toBe(0);
    expectQuiet(visit);
  });

  it("names what cannot all be right and asks for those two lugs again", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    const panel = await begin(page, "3", "2");
    await panel.locator(".touch-form").waitFor();
    for (let touch = 1; touch <= 2; touch++) {
      await panel.getByLabel("Position 1", { exact: true }).check();
      await panel.getByRole("button", { name: "Next" }).click();
      await expect.poll(() => touches(panel)).toBe(touch);
    }
    expect(await panel.locator(".touch-form").textContent()).toContain("touch these two once more");
    await panel.getByText(/^What was heard/).click();
    expect(await panel.locator("li.fault-text").count()).toBe(2);
    expectQuiet(visit);
  });

  for (const [width, colorScheme] of [
    [390, "dark"],
    [1280, "light"],
  ] as const)
    it(`has no serious finding of axe and keeps to the page, half way and at the end, ${width} px wide, ${colorScheme}`, async () => {
      const visit = await site.stay({ width, colorScheme });
      const { page } = visit;
      await whenReady(page);
      const panel = await begin(page, "12 12", "5");
      await panel.locator(".touch-form").waitFor();
      await bringAxe(page);
      expect(await seriousFindings(page, "#panel-unknown")).toEqual([]);
      await begin(page, "4 4", "5");
      await expect.poll(() => panel.locator(".found-lug").count()).toBe(8);
      await answerAll(panel, LEVER, ROLES);
      expect(await seriousFindings(page, "#panel-unknown")).toEqual([]);
      const beyond = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(beyond).toBeLessThanOrEqual(0);
      expectQuiet(visit);
    });
});
