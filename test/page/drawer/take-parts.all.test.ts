import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { whenReady } from "../actions.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { keep, openShelf, showCard } from "../shelf/shelf-page.ts";

describeWith("chromium", "a guard taken apart", () => {
  const site = usePage();

  it("gives its parts to the drawer, each once, and takes them out again", async () => {
    const visit = await site.visit({ width: 390, height: 844 });
    const { page } = visit;
    await whenReady(page);
    await keep(page);
    const shelf = await openShelf(page);
    const name = (await shelf.locator(".shelf-name").first().textContent())!;
    const card = await showCard(shelf, name);
    await card.getByLabel("State").selectOption("retired");
    await card.getByRole("button", { name: "Take its parts into the drawer" }).click();
    await card.getByText(/^Taken in of “/).waitFor();
    await card.getByRole("button", { name: "Undo taking them in" }).click();
    await card.getByText("are out of the drawer again").waitFor();

    await page.getByRole("tab", { name: "Drawer" }).click();
    const drawer = page.locator(".drawer");
    const take = drawer.getByRole("button", { name: `Take its parts into the drawer: ${name}` });
    await take.click();
    await drawer.getByText(/^Taken in of “/).waitFor();
    const rows = drawer.locator(".drawer-row");
    await expect.poll(() => rows.count()).toBeGreaterThan(3);
    const { height } = (await take.boundingBox())!;
    expect(height).toBeGreaterThanOrEqual(43.5);
    await bringAxe(page);
    expect(await seriousFindings(page, ".drawer")).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);

    const owned = drawer.getByLabel(/^Owned: /);
    const counts = await owned.evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));
    const undo = drawer.getByRole("button", { name: "Undo taking them in" });
    await undo.click();
    await expect.poll(() => rows.count()).toBe(0);
    await take.click();
    await expect.poll(() => rows.count()).toBe(counts.length);
    await take.click();
    await drawer.getByText(/No part of “.*” was taken in/).waitFor();
    expect(await owned.evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value))).toEqual(counts);
    await drawer.getByRole("button", { name: "They are others: count them too" }).click();
    await drawer.getByText(/^Counted besides/).waitFor();
    const doubled = counts.map((count) => String(2 * Number(count)));
    const now = () => owned.evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));
    await expect.poll(now).toEqual(doubled);
    await undo.click();
    await expect.poll(now).toEqual(counts);
    expectQuiet(visit);
  });
});
