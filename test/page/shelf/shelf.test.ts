import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { draftOf, openScenario, whenReady } from "../actions.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { keep, openOnBench, openShelf, row } from "./shelf-page.ts";

const KEPT = "HSS guard, 250 kΩ pots";

describeWith("chromium", "the shelf", () => {
  const site = usePage();

  it("keeps the guard on the bench in one press, and has it after a reload, to be found and opened", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    expect(await keep(page)).toContain(`Kept on the shelf: “${KEPT}”`);
    const kept = JSON.stringify((await draftOf(page)).source);
    await openScenario(page, /blend pot/i);
    await page.reload();
    const shelf = await openShelf(page);
    const search = shelf.getByLabel("Find a guard");
    await search.fill("telephone");
    await row(shelf, KEPT).waitFor({ state: "detached" });
    await search.fill("hss");
    await row(shelf, KEPT).waitFor();
    await openOnBench(page, shelf, KEPT);
    expect(JSON.stringify((await draftOf(page)).source)).toBe(kept);
    expectQuiet(visit);
  });
});
