import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { draftOf, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "a person's own wire, lengths and iron", () => {
  const site = usePage();

  async function openSheet() {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    await openFields(page);
    return visit;
  }

  async function openFields(page: Page) {
    await showTab(page, "Solder");
    await page.getByText("My wire, lengths and iron").click();
    await page.getByRole("button", { name: "Add a reel" }).waitFor();
  }

  const table = (page: Page, caption: string) =>
    page.locator("table", { has: page.getByText(caption, { exact: true }) });
  const rowsOf = (page: Page, caption: string) => table(page, caption).locator("tbody tr").allInnerTexts();

  it("decides what the sheet takes from which reel, whether it reaches, and is there again next time", async () => {
    const visit = await openSheet();
    const { page } = visit;
    await expect.poll(() => rowsOf(page, "Wire by the reel").then((rows) => rows.join())).toMatch(/white, plastic/);
    const add = page.getByRole("button", { name: "Add a reel" });
    await add.click();
    await page.getByLabel("Metres left on reel 1").waitFor();
    await add.click();
    const colour = page.getByLabel("Colour of reel 2");
    await colour.fill("Yellow");
    await colour.press("Tab");
    await page.getByLabel("Kind of reel 2").selectOption("cloth");
    await page.getByLabel("Metres left on reel 2").fill("0.3");
    await page.getByLabel("Metres left on reel 2").press("Tab");
    await page.getByLabel("Hot wires").selectOption("cloth");
    const yellow = () => rowsOf(page, "Wire by the reel").then((rows) => rows.find((row) => row.startsWith("yellow")));
    await expect.poll(yellow).toMatch(/^yellow, cloth.*0\.3 m.*too short/s);
    expect((await rowsOf(page, "Wires to cut")).join()).toMatch(/push the braid back/);
    await page.getByLabel("Metres left on reel 2").fill("5");
    await page.getByLabel("Metres left on reel 2").press("Tab");
    await expect.poll(yellow).toMatch(/enough/);
    await bringAxe(page);
    expect(await seriousFindings(page, "main")).toEqual([]);
    await page.reload();
    await whenReady(page);
    await openFields(page);
    expect(await page.getByLabel("Colour of reel 2").inputValue()).toBe("yellow");
    await expect.poll(yellow).toMatch(/enough/);
    expectQuiet(visit);
  });

  it("puts a screened wire's capacitance into the guard, and so into the curve", async () => {
    const visit = await openSheet();
    const { page } = visit;
    await page.getByLabel("To the jack's tip").selectOption("screened");
    await page.getByRole("button", { name: "Put it into the guard" }).click();
    await settled(page);
    const { source } = (await draftOf(page)) as { source: { wires: Record<string, string>[] } };
    const screened = source.wires.filter(({ kind }) => kind === "screened");
    expect(screened).toHaveLength(1);
    expect([screened[0]!.from, screened[0]!.to]).toContain("jack.tip");
    expect(screened[0]!.length).toMatch(/^\d+mm$/);
    await expect.poll(() => page.getByRole("button", { name: "Put it into the guard" }).count()).toBe(0);
    expectQuiet(visit);
  });
});
