import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { draftOf, openScenario, whenReady } from "../actions.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { keep, openShelf, showCard } from "../shelf/shelf-page.ts";

async function openDrawer(page: Page): Promise<Locator> {
  await openShelf(page);
  await page.getByRole("tab", { name: "Drawer" }).click();
  const drawer = page.locator(".drawer");
  await drawer.waitFor();
  return drawer;
}

async function putIn(drawer: Locator, sort: string, values: Readonly<Record<string, string>>): Promise<void> {
  const form = drawer.getByRole("form", { name: "Put into the drawer" });
  const rows = drawer.locator(".drawer-row");
  const before = await rows.count();
  await form.getByLabel("What", { exact: true }).selectOption({ label: sort });
  for (const [label, value] of Object.entries(values)) {
    const field = form.getByLabel(label, { exact: true });
    if ((await field.evaluate(({ tagName }) => tagName)) === "SELECT") await field.selectOption(value);
    else await field.fill(value);
  }
  await form.getByRole("button", { name: "Put it in" }).click();
  await rows.nth(before).waitFor();
}

describeWith("chromium", "the drawer", () => {
  const site = usePage();

  it("is kept, holds guards against its parts, and makes guards that open on the bench and are undone", async () => {
    const visit = await site.visit({ width: 390, height: 844 });
    const { page } = visit;
    await whenReady(page);
    await keep(page);
    let drawer = await openDrawer(page);
    await putIn(drawer, "Pot", { Value: "250k", "How many": "2", "Measured, each": "238k", "Price of one": "7" });
    await putIn(drawer, "Cap", { Value: "22n", "How many": "2", "Measured, each": "21.3n" });
    await putIn(drawer, "Cap", { Value: "47n", "How many": "0", "Price of one": "2.50" });
    await putIn(drawer, "Pickup", { "Which pickup": "single-vintage", "How many": "1" });
    await drawer.getByText("cap 47 nF ±10 %, printed 473K").waitFor();

    await page.reload();
    await whenReady(page);
    drawer = await openDrawer(page);
    expect(await drawer.locator(".drawer-row").count()).toBe(4);
    expect(await drawer.getByLabel(/^Measured: cap 22 nF/).inputValue()).toBe("21.3n");

    // The shelf's guard is one that is wanted: two single parts of it lie there, and the rest is to be bought.
    await drawer.getByRole("button", { name: "Copy the list" }).waitFor();
    const [csv] = await Promise.all([
      page.waitForEvent("download"),
      drawer.getByRole("button", { name: "Save as CSV" }).click(),
    ]);
    expect(csv.suggestedFilename()).toBe("shopping-list.csv");
    await drawer.getByRole("button", { name: "Find the changes that are heard" }).click();
    await drawer
      .getByRole("button", { name: /^Try it on the bench: cap 47 nF/ })
      .first()
      .waitFor();

    await drawer.getByRole("button", { name: "What can I build" }).click();
    await drawer.getByText(/^All \d+ guards were heard\.$/).waitFor();
    await bringAxe(page);
    expect(await seriousFindings(page, ".drawer")).toEqual([]);
    const small = await drawer
      .locator("button:visible, input:not([type=file]):visible, select:visible, summary:visible")
      .evaluateAll((all) =>
        all
          .filter((each) => {
            const { width, height } = (each.closest("label.tick") ?? each).getBoundingClientRect();
            return width < 44 || height < 43.5;
          })
          .map(({ outerHTML }) => outerHTML.slice(0, 120)),
      );
    expect(small).toEqual([]);
    const before = JSON.stringify((await draftOf(page)).source);
    await drawer.getByRole("button", { name: "Open it on the bench: number 1" }).click();
    await page.locator(".notice", { hasText: "a guard from the drawer" }).waitFor();
    expect((await draftOf(page)).source).toMatchObject({
      parts: { cap: { capacitance: expect.closeTo(21.3e-9, 15) } },
    });
    await page.getByRole("button", { name: "Undo" }).first().click();
    await page.waitForFunction((source) => !source.includes("From the drawer"), before);
    expectQuiet(visit);
  });

  it("has its guards in the shelf's order, takes a comma in a price, and asks about a pot of 500 ohms", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const titles: string[] = [];
    for (const scenario of [/HSS/, /came back/, /22 nF/, /HSH/]) {
      await openScenario(page, scenario);
      titles.push(await page.getByLabel("This guard").inputValue());
      await keep(page);
    }
    const drawer = await openDrawer(page);
    const rows = drawer.locator("table").first().locator("tbody tr");
    await expect.poll(() => rows.count()).toBe(titles.length);
    const names = await rows.evaluateAll((all) => all.map((row) => row.firstElementChild!.textContent));
    expect(names).toEqual([...titles].reverse());

    const form = drawer.getByRole("form", { name: "Put into the drawer" });
    await form.getByLabel("Value", { exact: true }).fill("500");
    await form.getByRole("button", { name: "Put it in" }).click();
    await form.getByText('"500" alone is 500 ohms; write the unit: "500k"').waitFor();
    await putIn(drawer, "Pot", { Value: "500k", "How many": "1", "Price of one": "6,50" });
    expect(await drawer.getByLabel(/^Price of one: 500 kΩ pot/).inputValue()).toBe("6.5");
    await form.getByLabel("What", { exact: true }).selectOption({ label: "Wire" });
    await form.getByLabel("Length on the reel").fill("2");
    await form.getByRole("button", { name: "Put it in" }).click();
    await drawer.getByText("cloth wire, 2 m").waitFor();
  });

  it("takes soldered parts off what is free once a guard is in the guitar", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await keep(page);
    const shelf = await openShelf(page);
    const name = (await shelf.locator(".shelf-name").first().textContent())!;
    const card = await showCard(shelf, name);
    await card.getByLabel("State").selectOption("in the guitar");
    await page.getByRole("tab", { name: "Drawer" }).click();
    const drawer = page.locator(".drawer");
    await drawer.waitFor();
    await putIn(drawer, "Cap", { Value: "22n", "How many": "1" });
    await drawer.getByText("1 of them soldered in").waitFor();
    await drawer.getByLabel(`Parts of ${name} are soldered in and counted`).locator("input").uncheck();
    await drawer.getByText("1 of them soldered in").waitFor({ state: "detached" });
  });
});
