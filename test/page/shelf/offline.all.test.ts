import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { openScenario, whenReady } from "../actions.ts";
import { usePage } from "../browser.ts";
import { fill, guardsUpTo, keep, openOnBench, openShelf, row, savedBy, showCard } from "./shelf-page.ts";

const KEPT = "HSS guard, 250 kΩ pots";

describeWith("chromium", "the shelf without a net", () => {
  const site = usePage();

  it("keeps, finds, writes on, opens and saves guards", async () => {
    const { page, context } = await site.visit({ keepsItself: true });
    await whenReady(page);
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await context.setOffline(true);
    await page.reload();
    await whenReady(page);
    await openScenario(page, /HSS/);
    expect(await keep(page)).toContain(`Kept on the shelf: “${KEPT}”`);
    const shelf = await openShelf(page);
    await fill(shelf, guardsUpTo(3));
    await shelf.getByLabel("Find a guard").fill("wired");
    await shelf.getByText("1 of 4 guards").waitFor();
    const card = await showCard(shelf, "Guard 2");
    await card.getByLabel("Notes").fill("from the workshop");
    await card.getByRole("button", { name: "Back to all guards" }).click();
    await shelf.getByLabel("Find a guard").fill("");
    await row(shelf, KEPT).locator(".thumb svg").waitFor();
    const saved = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    expect(saved).toHaveLength(4);
    expect(saved.find(({ name }) => name === "Guard 2")!.notes).toBe("from the workshop");
    await openOnBench(page, shelf, "Guard 3");
  });
});
