import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { draftOf, openScenario, showTab, whenReady } from "../actions.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { keep, openOnBench, openShelf, row, savedBy, showCard } from "./shelf-page.ts";

describeWith("chromium", "the history of a guard on the shelf", () => {
  const site = usePage();

  it("keeps the guard on the bench in one press, and every wiring after it under the same name, through a reload", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    expect(await keep(page)).toContain("Kept on the shelf: “HSS guard, 250 kΩ pots”");
    const first = JSON.stringify((await draftOf(page)).source);
    expect(await keep(page)).toContain("on the shelf already, as it is here");
    await page.reload();
    await whenReady(page);
    await showTab(page, "Parts");
    const volume = page.locator('[data-path="parts.volume.resistance"]');
    await volume.fill("300k");
    await volume.press("Enter");
    expect(await keep(page)).toContain("What it was stands in its history");

    const shelf = await openShelf(page);
    expect(await shelf.locator(".shelf-row").count()).toBe(1);
    await row(shelf, "HSS guard, 250 kΩ pots").locator(".thumb svg").waitFor();
    const [kept] = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    expect(JSON.parse(kept!.file).parts.volume.resistance).toBe("300k");

    const card = await showCard(shelf, "HSS guard, 250 kΩ pots");
    await card.getByText("History (1)").click();
    await card.getByRole("button", { name: /^Restore wiring/ }).click();
    await card.getByText("History (2)").waitFor();
    await card.getByRole("button", { name: "Back to all guards" }).click();
    const [back] = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    expect(back!.file).toBe(kept!.history[0]!.was.file);
    expect(back!.history[0]!.was.file).toBe(kept!.file);

    await openOnBench(page, shelf, "HSS guard, 250 kΩ pots");
    expect(JSON.stringify((await draftOf(page)).source)).toBe(first);
    expect(await shelf.isVisible()).toBe(false);
    expectQuiet(visit);
  });
});
