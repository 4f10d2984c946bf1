import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { openScenario, showTab, whenOpen } from "../actions.ts";
import { usePage } from "../browser.ts";
import { keep, openShelf } from "../shelf/shelf-page.ts";

/** Runs in the page: as it is where the browser was killed before the draft knew of the shelf. */
function forgetKept(): void {
  const draft = JSON.parse(localStorage.getItem("presolder.draft.1")!);
  delete draft.kept;
  localStorage.setItem("presolder.draft.1", JSON.stringify(draft));
}

describeWith("chromium", "the guard on the bench, kept on the shelf", () => {
  const site = usePage();

  it("is one guard on board and map, before the draft knows of it and after the browser was killed", async () => {
    const { page, context } = await site.visit();
    await whenOpen(page);
    let shelf = await openShelf(page);
    await showTab(page, "Listening board");
    const cells = shelf.locator(".board-cell");
    await shelf.getByRole("button", { name: "Put on the board" }).click();
    await expect.poll(() => cells.allTextContents()).toEqual([expect.stringContaining("(on the bench)")]);
    await keep(page);
    await expect.poll(() => cells.allTextContents()).toEqual([expect.not.stringContaining("(on the bench)")]);
    await shelf.getByRole("button", { name: "Put on the board" }).click();
    await expect.poll(() => cells.count()).toBe(1);
    expect(await page.evaluate(() => localStorage.getItem("presolder.draft.1"))).toMatch(/"kept":"[0-9a-f-]{36}"/);

    const later = await context.newPage();
    await later.addInitScript(forgetKept);
    await later.goto(site.origin);
    await whenOpen(later);
    shelf = await openShelf(later);
    await showTab(later, "Listening board");
    const guards = shelf.getByLabel("Guard", { exact: true }).locator("option");
    await expect.poll(() => guards.count()).toBe(1);
    await expect.poll(() => shelf.locator(".board-cell").count()).toBe(1);
    expect(await keep(later)).toContain("is on the shelf already");
    await later.close();
  });

  it("leaves the board where it was never kept and another one is on the bench", async () => {
    const { page } = await site.visit();
    await whenOpen(page);
    let shelf = await openShelf(page);
    await showTab(page, "Listening board");
    await shelf.getByRole("button", { name: "Put on the board" }).click();
    await shelf.locator(".board-cell").waitFor();
    await openScenario(page, /[Tt]wo humbuckers/);
    await page.reload();
    await whenOpen(page);
    shelf = await openShelf(page);
    await showTab(page, "Listening board");
    await shelf.getByText(/^Nothing on the board yet/).waitFor();
  });
});
