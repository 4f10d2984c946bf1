import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { whenReady } from "../actions.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { fill, guardCalled, guardsUpTo, openShelf, showCard } from "./shelf-page.ts";

const WIDTHS = [360, 390, 768, 1440];

describeWith("chromium", "a shelf of many guards", () => {
  const site = usePage();

  it("makes rows and drawings of those alone that are come to, and no row anew while one is looked for", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    const shelf = await openShelf(page);
    await fill(shelf, guardsUpTo(500));
    await shelf.getByText("500 guards", { exact: true }).waitFor();
    const rows = shelf.locator(".shelf-row");
    expect(await rows.count()).toBeLessThan(60);
    const first = shelf.locator(".shelf-row .thumb").first();
    await first.scrollIntoViewIfNeeded();
    await first.locator("svg").waitFor();
    await page.waitForTimeout(500);
    expect(await shelf.locator(".thumb svg").count()).toBeLessThan(60);

    const search = shelf.getByLabel("Find a guard");
    const mark = () => rows.evaluateAll((all) => all.map((each) => ((each as HTMLElement).dataset.seen ??= "before")));
    await mark();
    await search.pressSequentially("guard 495");
    await shelf.getByText("1 of 500 guards").waitFor();
    expect(await rows.count()).toBe(1);
    const seen = () => rows.evaluateAll((all) => all.map((each) => (each as HTMLElement).dataset.seen ?? "new"));
    // It stood on the first screen; guard 49 did not.
    expect(await seen()).toEqual(["before"]);
    await search.press("Backspace");
    await expect.poll(seen).toEqual(["new"]);
    await mark();
    await search.press("5");
    await search.press("Backspace");
    await shelf.getByText("1 of 500 guards").waitFor();
    expect(await seen()).not.toContain("new");
    await search.fill("lever touched");
    await shelf.getByText("10 of 500 guards").waitFor();

    await search.fill("");
    await shelf.getByText("500 guards", { exact: true }).waitFor();
    const more = shelf.getByRole("button", { name: /Show more/ });
    await more.press("Enter");
    await expect.poll(() => rows.count()).toBeGreaterThanOrEqual(42);
    expectQuiet(visit);
  });

  it("is used by keys alone", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    await fill(shelf, guardsUpTo(2));
    const focused = () => page.evaluate(() => document.activeElement!.textContent || document.activeElement!.tagName);
    await page.getByRole("button", { name: "Shelf", exact: true }).press("Enter");
    expect(await focused()).toBe("Shelf");
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("The shelf");
    await page.keyboard.press("Tab");
    expect(await focused()).toBe("Close the shelf");
    await shelf.getByRole("button", { name: "Guard 2", exact: true }).press("Enter");
    expect(await focused()).toBe("Guard 2");
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("Guard 2");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.locator(".notice", { hasText: "On the bench: “Guard 2”" }).waitFor();
    expect(await focused()).toBe("Shelf");
  });

  it("is clean for axe, as broad as the screen, and under a thumb at 390 px, as a list and as a card", {
    timeout: 400_000,
  }, async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    const set = {
      id: "00000000-0000-4000-8000-000000000001",
      date: "2026-03-01",
      note: "cold",
      values: [{ what: "jack", read: "7.9k" }],
    };
    const long = guardCalled("A guard with averyveryveryverylongnamethathasnoplacetobreakanywhereatall", {
      guitar: "the guitar of somebody with a long name",
      readings: [set],
      history: [{ at: "2026-03-01T18:30:00.000Z", by: "change", was: { file: "{}" } }],
    });
    await fill(shelf, [...guardsUpTo(3), long]);
    await bringAxe(page);
    const look = async () => {
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 844 });
        expect(await page.evaluate(() => document.documentElement.scrollWidth), String(width)).toBe(width);
      }
      expect(await seriousFindings(page, ".shelf")).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      const targets = shelf.locator(
        "button:visible, .button:visible, select:visible, summary:visible, .shelf-tick:visible",
      );
      expect(await targets.count()).toBeGreaterThan(5);
      const small = await targets.evaluateAll((all) =>
        all.filter((each) => each.getBoundingClientRect().height < 44).map((each) => each.outerHTML.slice(0, 100)),
      );
      expect(small).toEqual([]);
      await page.emulateMedia({ colorScheme: "dark" });
      expect(await seriousFindings(page, ".shelf")).toEqual([]);
      await page.emulateMedia({ colorScheme: "light" });
    };
    await shelf.getByRole("checkbox").first().check();
    await look();
    const card = await showCard(shelf, long.name);
    await card.getByText("History (1)").click();
    await look();
  });
});
